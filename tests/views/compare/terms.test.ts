import { describe, expect, it } from 'vitest';
import { compareView } from '../../../src/views/compare/compare-view.ts';
import { priced } from '../../cli/priced.ts';

describe('the comparison for a customer', () => {
  const options = priced(['flake-full-broadcast', 'solid-colour'], {
    set: { tax_mode: 'on_price', sales_tax_rate: 0.08 },
  }).map(({ sheet, results }) => ({ id: sheet.id, title: sheet.title, results }));
  const labels = compareView(options, false, 'us')
    .groups.filter(({ title }) => title === 'Price')
    .flatMap(({ rows }) => rows.map(({ label }) => label));

  it('says what a price includes as included: cracks', () => {
    expect(labels).toContain('Included: cracks');
  });

  it('says how long it holds and what tax comes on top as terms, which are not included', () => {
    expect(labels).toContain('Valid');
    expect(labels).toContain('Sales tax');
    expect(labels.filter((label) => /^Included: (valid|sales tax)/.test(label))).toEqual([]);
  });
});
