import { describe, expect, it } from 'vitest';
import { datedEntries } from '../../src/cli/dated-entries.ts';

function dated(sets: Readonly<Record<string, string>>): Record<string, string> {
  return Object.fromEntries(datedEntries({ sets: new Map(Object.entries(sets)), rows: new Map() }, '2026-03-09').sets);
}

describe('a quote made on the command line', () => {
  it('is of today, March 9, and starts 14 days on', () => {
    expect(dated({ crack_length: '30' })).toEqual({
      quote_date: '2026-03-09',
      start_date: '2026-03-23',
      crack_length: '30',
    });
  });

  it('starts 14 days after the date it is given, or on the day it is given', () => {
    expect(dated({ quote_date: '2026-05-01' })).toEqual({ quote_date: '2026-05-01', start_date: '2026-05-15' });
    expect(dated({ start_date: '2026-04-01' })).toEqual({ quote_date: '2026-03-09', start_date: '2026-04-01' });
  });

  it('leaves a date that is none to be refused', () => {
    expect(dated({ quote_date: 'tomorrow' })).toEqual({ quote_date: 'tomorrow' });
  });
});
