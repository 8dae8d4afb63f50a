import { describe, expect, it } from 'vitest';
import type { CellValue } from '../../src/formula/cells.ts';
import { KeptTexts } from '../../src/quote/kept-texts.ts';
import type { OptionResults } from '../../src/quote/option-results.ts';
import { flake, openQuote } from '../helpers/demo-quote.ts';

/** Results of which a test says what each cell reads, and a text that is told of cells 0 and 1. */
async function telling() {
  const { session } = await openQuote();
  const results = session.results(flake);
  if (results === undefined) throw new Error('The option has no results');
  const cells: CellValue[] = [20, 9, 1];
  const read = (cell: number): CellValue => cells[cell] ?? 0;
  let told = 0;
  const texts = new KeptTexts<string>();
  const tell = (of: OptionResults = { ...results, read }, also: unknown = undefined): string =>
    texts.told(
      of,
      'cracks',
      () => [0, 1],
      also,
      () => {
        told += 1;
        return `${of.read(0)} ft at $${of.read(1)}`;
      },
    );
  return { results: { ...results, read }, cells, tell, timesTold: () => told };
}

describe('what an option has said', () => {
  it('is said again without being told anew while the cells it was told from stand', async () => {
    const { cells, tell, timesTold } = await telling();
    expect(tell()).toBe('20 ft at $9');
    cells[2] = 5;
    expect(tell()).toBe('20 ft at $9');
    expect(timesTold()).toBe(1);
  });

  it('is told anew when one of them reads something else, or fails', async () => {
    const { cells, tell, timesTold } = await telling();
    tell();
    cells[1] = 15;
    expect(tell()).toBe('20 ft at $15');
    cells[0] = { kind: 'division', origin: 0 };
    expect(tell()).toContain('$15');
    expect(timesTold()).toBe(3);
  });

  it('is told anew when what else it was told from is another', async () => {
    const { results, tell, timesTold } = await telling();
    tell(results, 'nobody');
    tell(results, 'nobody');
    tell(results, 'R. Vale');
    expect(timesTold()).toBe(2);
  });

  it('is told anew of the option laid out anew: a row more, words written', async () => {
    const { results, tell, timesTold } = await telling();
    tell(results);
    tell({ ...results, option: { ...results.option } });
    expect(timesTold()).toBe(2);
  });
});
