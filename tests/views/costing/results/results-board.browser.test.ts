import { expect, fixture, html } from '@open-wc/testing';
import type { BoardRow, BoardValue, BoardView } from '../../../../src/views/costing/results/board-view.ts';
import type { ResultsBoard } from '../../../../src/views/costing/results/results-board.ts';
import '../../../../src/views/costing/results/results-board.ts';
import { withPageInFront } from '../../../helpers/page-focus.ts';
import { withTheme } from '../../../helpers/page-theme.ts';
import { until } from '../../../helpers/until.ts';

let leave: () => void;

beforeEach(() => {
  leave = withPageInFront();
});

afterEach(() => leave());

const options = [
  { id: 'a', title: 'Full flake' },
  { id: 'b', title: 'Solid colour' },
];

function value(optionId: string, cell: number, shown: string, suffix = ''): BoardValue {
  return { optionId, cell, value: cell, shown, suffix, failed: false, delta: '' };
}

function row(line: string, label: string, ...values: BoardValue[]): BoardRow {
  return { line, label, values };
}

const price = row('price', 'Price', value('a', 1, '$4,250'), value('b', 2, '$4,200'));
const margin = row('gross_margin', 'Gross profit, of price', value('a', 3, '46', '%'), value('b', 4, '45', '%'));
const paid = row('paid_hours', 'Paid hours', value('a', 5, '29', 'h'), value('b', 6, '34', 'h'));

const board: BoardView = {
  options,
  groups: [
    { title: '', rows: [price] },
    { title: 'Profit', rows: [margin] },
    { title: 'Crew time', rows: [paid] },
  ],
};

/** The same board with the price of the first option moved. */
function movedTo(shown: string, delta: string): BoardView {
  const moved = row('price', 'Price', { ...value('a', 1, shown), delta }, value('b', 2, '$4,200'));
  return { ...board, groups: [{ title: '', rows: [moved] }, ...board.groups.slice(1)] };
}

/** The texts that are underlined. */
function underlined(element: ResultsBoard): string[] {
  return [...element.renderRoot.querySelectorAll('[role="gridcell"]')]
    .filter((cell) => getComputedStyle(cell).textDecorationLine === 'underline')
    .map((cell) => cell.textContent.trim());
}

async function shownBoard(): Promise<{ element: ResultsBoard; asked: unknown[] }> {
  const element = await fixture<ResultsBoard>(html`<results-board .board=${board}></results-board>`);
  const asked: unknown[] = [];
  element.addEventListener('why-asked', ({ detail }) => asked.push(detail));
  return { element, asked };
}

/** The texts of the cells that Tab stops at. */
function stops(element: ResultsBoard): string[] {
  return [...element.renderRoot.querySelectorAll('[tabindex="0"]')].map((cell) => cell.textContent.trim());
}

async function press(element: ResultsBoard, key: string, ctrlKey = false): Promise<string> {
  const active = element.shadowRoot?.activeElement;
  active?.dispatchEvent(
    new KeyboardEvent('keydown', { key, ctrlKey, bubbles: true, composed: true, cancelable: true }),
  );
  await element.updateComplete;
  return element.shadowRoot?.activeElement?.textContent.trim() ?? '';
}

describe('the results of Costing', () => {
  it('are one tab stop, which the keys of a grid move from number to number', async () => {
    const { element } = await shownBoard();
    expect(stops(element)).to.deep.equal(['$4,250']);
    element.focus();
    expect(await press(element, 'ArrowRight')).to.equal('$4,200');
    expect(await press(element, 'ArrowDown')).to.equal('45 %');
    expect(await press(element, 'Home')).to.equal('46 %');
    expect(await press(element, 'End', true)).to.equal('34 h');
    expect(await press(element, 'ArrowDown')).to.equal('34 h');
    expect(stops(element)).to.deep.equal(['34 h']);
  });

  it('ask why on Enter, on the space bar and on a click, and take the focus back to the number that was asked', async () => {
    const { element, asked } = await shownBoard();
    element.focus();
    await press(element, 'ArrowDown');
    await press(element, 'Enter');
    await press(element, ' ');
    const hours = element.renderRoot.querySelector<HTMLElement>('[data-row="paid_hours"] [data-column="b"] .unit');
    hours?.click();
    expect(asked).to.deep.equal([
      { cell: 3, option: 'a' },
      { cell: 3, option: 'a' },
      { cell: 6, option: 'b' },
    ]);
    const active = element.shadowRoot?.activeElement;
    if (active instanceof HTMLElement) active.blur();
    await element.updateComplete;
    element.focus();
    expect(element.shadowRoot?.activeElement?.textContent.trim()).to.equal('34 h');
  });

  it('keep their one stop when a change takes its row away', async () => {
    const { element } = await shownBoard();
    element.focus();
    await press(element, 'ArrowDown');
    element.board = {
      options,
      groups: [
        { title: '', rows: [price] },
        { title: 'Crew time', rows: [paid] },
      ],
    };
    await element.updateComplete;
    expect(stops(element)).to.have.length(1);
  });

  it('have the roles of a grid, each number under its option and beside its line', async () => {
    const { element } = await shownBoard();
    const grid = element.renderRoot.querySelector('[role="grid"]');
    const roles = (role: string): string[] =>
      [...(grid?.querySelectorAll(`[role="${role}"]`) ?? [])].map(({ textContent }) => textContent.trim());
    expect(roles('columnheader')).to.deep.equal(['Full flake', 'Solid colour']);
    expect(roles('rowheader')).to.deep.equal(['Price', 'Profit', 'Gross profit, of price', 'Crew time', 'Paid hours']);
    expect(roles('gridcell').filter((text) => text !== '')).to.have.length(6);
  });

  it('underline what moved for a second after the last change; how far it moved stays', async () => {
    const { element } = await shownBoard();
    expect(underlined(element)).to.deep.equal([]);
    element.board = movedTo('$4,334', '+$84');
    await element.updateComplete;
    expect(underlined(element)).to.deep.equal(['$4,334+$84']);
    await new Promise((resolve) => setTimeout(resolve, 500));
    element.board = movedTo('$4,300', '−$34');
    await element.updateComplete;
    const changed = performance.now();
    expect(underlined(element)).to.deep.equal(['$4,300−$34']);
    await until(() => underlined(element).length === 0);
    expect(performance.now() - changed).to.be.at.least(990);
    expect(element.renderRoot.querySelector('.delta')?.textContent).to.equal('−$34');
  });

  it('are not underlined again when the same board is put together anew', async () => {
    const { element } = await shownBoard();
    const moved = movedTo('$4,334', '+$84');
    element.board = moved;
    await element.updateComplete;
    await until(() => underlined(element).length === 0);
    element.board = { ...moved, groups: [...moved.groups] };
    await element.updateComplete;
    expect(underlined(element)).to.deep.equal([]);
  });

  for (const scheme of ['light', 'dark'] as const)
    it(`have no fault that axe can find: ${scheme}`, async () => {
      const undress = await withTheme(scheme);
      const { element } = await shownBoard();
      await expect(element).to.be.accessible();
      undress();
    });
});
