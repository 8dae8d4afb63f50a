import { describe, expect, it } from 'vitest';
import { faces, isOwners, readRoute, writeRoute } from '../../../src/views/app/route.ts';

describe('an address', () => {
  it('leads back to the face it was written for, whatever the quote is called', () => {
    for (const id of ['demo', 'a/b', '100 %', 'Juniper Lane é']) {
      const route = { kind: 'quote', id, face: 'costing' } as const;
      expect(readRoute(writeRoute(route))).toEqual(route);
    }
  });

  it.each(['', '#/', '#/quote', '#/quote/', '#/nowhere/demo', '#/quote/%E0%A4%A/price'])(
    'that names no quote, as %s, leads to the list',
    (hash) => {
      expect(readRoute(hash)).toEqual({ kind: 'start' });
    },
  );

  it('leads to the day of a quote, which is the owner’s as Costing is', () => {
    expect(readRoute('#/quote/demo/day')).toEqual({ kind: 'quote', id: 'demo', face: 'day' });
    expect(faces.filter(isOwners)).toEqual(['costing', 'day']);
  });

  it('with a face nobody knows leads to the price', () => {
    expect(readRoute('#/quote/demo/everything')).toEqual({ kind: 'quote', id: 'demo', face: 'price' });
  });
});
