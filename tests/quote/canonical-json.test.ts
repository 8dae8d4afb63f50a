import { describe, expect, it } from 'vitest';
import { canonicalJson, contentHash } from '../../src/quote/canonical-json.ts';

describe('canonical JSON', () => {
  it('orders keys, so that the same floor written in another order is the same text', () => {
    expect(canonicalJson({ width: 22, length: 24 })).toBe('{"length":24,"width":22}');
  });

  it('leaves out what is undefined and keeps null', () => {
    expect(canonicalJson({ a: undefined, b: null, c: [1, { z: 1, y: 2 }] })).toBe('{"b":null,"c":[1,{"y":2,"z":1}]}');
  });

  // FIPS 180-4 example: SHA-256 of the text abc; the JSON text of "abc" has its quotation marks, so it hashes otherwise.
  it('hashes to 64 hexadecimal digits that change with any value', async () => {
    const [one, other] = [await contentHash({ waste: 0.05 }), await contentHash({ waste: 0.06 })];
    expect(one).toMatch(/^[0-9a-f]{64}$/);
    expect(other).not.toBe(one);
    expect(await contentHash({ waste: 0.05 })).toBe(one);
  });
});
