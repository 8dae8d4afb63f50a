import type { OptionChange } from '../../engine/quote-workbooks.ts';
import type { CellValue } from '../../formula/cells.ts';
import type { OptionResults } from '../../quote/option-results.ts';
import type { SheetPlace } from '../../quote/quote-document.ts';
import { openChecks, type ToldCheck } from '../../quote/told-checks.ts';
import type { QuoteSession } from '../../session/quote-session.ts';
import type { ProductRow } from '../../template/entries.ts';
import type { Measures } from '../../units/measures.ts';
import type { NamedResults } from '../parts/named-results.ts';
import type { ProductNames } from '../parts/shown-field.ts';
import { KeptViews } from './kept-views.ts';
import { type BoardView, boardView, emptyBoard } from './results/board-view.ts';
import { nothingKept, type ShownSheet, shownSheet } from './sheet/shown-sheet.ts';

/** What Costing shows of a quote, with everything that a change left alone kept as it was. */
export class KeptCosting {
  private readonly sheets = nothingKept();
  private readonly values = emptyBoard();
  /** What stood on the board before the last change. */
  private earlier = new Map<string, CellValue>();
  private readonly names = new KeptViews<ProductNames>();
  private readonly lists = new KeptViews<readonly ToldCheck[]>();
  /** Of the options no number of which has changed since. */
  private readonly told = new Map<string, { readonly measures: Measures; readonly list: readonly ToldCheck[] }>();

  /** To be told of every change of numbers, and with `undefined` that some may have been missed. */
  changed(changes: readonly OptionChange[] | undefined): void {
    this.earlier = changes === undefined ? new Map() : new Map(this.values.standing);
    if (changes === undefined) this.told.clear();
    for (const { option, changed } of changes ?? []) {
      if (changed === 'all' || changed.length > 0) this.told.delete(option);
    }
  }

  sheet(
    { quote }: QuoteSession,
    place: SheetPlace,
    results: OptionResults,
    priceList: ReadonlyMap<string, ProductRow>,
    measures: Measures,
  ): ShownSheet {
    const { products } = quote;
    const names = this.names.view('products', [priceList, products], () => productNames(priceList, products));
    return shownSheet({ quote, place, results, products: names, measures }, this.sheets);
  }

  /** The results, with how far the last change moved them. */
  board(options: readonly NamedResults[], measures: Measures): BoardView {
    return boardView(options, this.earlier, this.values, measures);
  }

  checks({ id, results }: NamedResults, measures: Measures): readonly ToldCheck[] {
    const known = this.told.get(id);
    if (known?.measures === measures) return known.list;
    const open = openChecks(results, measures);
    const from = open.flatMap(({ cell, verdict, says, passed, lapsed }) => [cell, verdict, says, passed, lapsed]);
    const list = this.lists.view(id, from, () => open);
    this.told.set(id, { measures, list });
    return list;
  }
}

function productNames(priceList: ReadonlyMap<string, ProductRow>, pinned: readonly ProductRow[]): ProductNames {
  return new Map(
    [...priceList.values(), ...pinned].map(({ product, name, kind }) => [
      product,
      { code: product, label: name, kind },
    ]),
  );
}
