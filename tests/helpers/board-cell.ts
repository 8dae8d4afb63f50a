import type { Locator, Page } from 'playwright-core';

/** The cell of Costing’s results where a line and an option meet. Waits for the option to be there. */
export async function boardCell(page: Page, line: string | RegExp, option: string): Promise<Locator> {
  const board = page.getByRole('grid', { name: 'Results, side by side' });
  const heads = board.getByRole('columnheader');
  await heads.filter({ hasText: new RegExp(`^${option}$`) }).waitFor();
  const at = (await heads.allTextContents()).indexOf(option);
  return board
    .getByRole('row')
    .filter({ has: page.getByRole('rowheader', { name: line, exact: true }) })
    .getByRole('gridcell')
    .nth(at);
}
