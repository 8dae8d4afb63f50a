import { expect, fixture, html } from '@open-wc/testing';
import '../../../../src/views/costing/grid/grid-or-cards.ts';
import type { GridOrCards } from '../../../../src/views/costing/grid/grid-or-cards.ts';
import type { RowCard } from '../../../../src/views/costing/grid/row-card.ts';
import type { SheetGrid } from '../../../../src/views/costing/grid/sheet-grid.ts';
import type { ShownTable } from '../../../../src/views/costing/sheet/shown-table.ts';
import type { NumberField } from '../../../../src/views/parts/number-field.ts';
import type { SheetEvents } from '../../../../src/views/parts/sheet-events.ts';
import { withPageInFront } from '../../../helpers/page-focus.ts';
import { withTheme } from '../../../helpers/page-theme.ts';
import { coatTable } from '../../../helpers/shown-fields.ts';

const matchMedia = window.matchMedia.bind(window);
let leave: () => void;

beforeEach(() => {
  leave = withPageInFront();
});

afterEach(() => {
  leave();
  window.matchMedia = matchMedia;
});

/** The answer to every question of width, as on a screen of 360 px; the widths themselves are tried in the built app. */
function asOnAPhone(): void {
  window.matchMedia = (query) => matchMedia(query.includes('max-width') ? 'all' : query);
}

async function tableOf(table: ShownTable = coatTable()): Promise<GridOrCards> {
  return await fixture<GridOrCards>(html`<grid-or-cards .table=${table}></grid-or-cards>`);
}

function cardsOf(table: GridOrCards): RowCard[] {
  return [...table.renderRoot.querySelectorAll('row-card')];
}

function part<T extends Element>(root: { readonly renderRoot: ParentNode } | undefined, selector: string): T {
  const found = root?.renderRoot.querySelector<T>(selector);
  if (!found) throw new Error(`There is no ${selector}`);
  return found;
}

async function repaint(table: GridOrCards, view: ShownTable): Promise<void> {
  table.table = view;
  await table.updateComplete;
  // The elements within paint after it.
  await new Promise((done) => setTimeout(done));
}

async function openCard(table: GridOrCards, at: number): Promise<RowCard> {
  const card = cardsOf(table)[at];
  part<HTMLButtonElement>(card, '.head').click();
  await card?.updateComplete;
  await new Promise((done) => setTimeout(done));
  if (card === undefined) throw new Error(`There is no card ${at}`);
  return card;
}

describe('what a sheet says of a table', () => {
  it('stands with it as a grid, as cards and where it has no rows', async () => {
    const note = 'No stem wall stands in a door.';
    expect((await tableOf({ ...coatTable(), note })).renderRoot.textContent).to.contain(note);
    asOnAPhone();
    expect((await tableOf({ ...coatTable(), note })).renderRoot.textContent).to.contain(note);
    expect((await tableOf({ ...coatTable([]), note })).renderRoot.textContent).to.contain(note);
  });
});

describe('columns of detail', () => {
  const folded = (table: ShownTable): ShownTable => ({
    ...table,
    columns: table.columns.map((column) => ({ ...column, detail: column.name === 'coverage' })),
  });

  function headsOf(table: GridOrCards): string[] {
    const heads = part<SheetGrid>(table, 'sheet-grid').renderRoot.querySelectorAll('thead tr:last-child th');
    return [...heads].map(({ textContent }) => textContent.trim());
  }

  it('are folded until every column is asked for', async () => {
    const table = await tableOf(folded(coatTable()));
    expect(headsOf(table)).to.not.include('Coverage');
    part<HTMLButtonElement>(table, '[aria-pressed]').click();
    await table.updateComplete;
    await part<SheetGrid>(table, 'sheet-grid').updateComplete;
    expect(headsOf(table)).to.include('Coverage');
  });

  it('stay in sight where something in them was changed', async () => {
    const changed = coatTable(['base'], { coverage: { standing: 'changed', standard: '125 ft²/gal' } });
    expect(headsOf(await tableOf(folded(changed)))).to.include('Coverage');
  });
});

describe('a table on a phone', () => {
  it('makes each row a card with its name and its telling numbers', async () => {
    asOnAPhone();
    const table = await tableOf();
    expect(table.renderRoot.querySelector('sheet-grid')).to.equal(null);
    const heads = cardsOf(table).map((card) => part(card, '.head').textContent?.replace(/\s+/g, ' ').trim());
    expect(heads[0]).to.contain('The base').and.to.contain('Coverage134 ft²/gal').and.to.contain('Need4.5 gal');
    expect(heads.length).to.equal(3);
  });

  it('opens a card to a form with every column but the name, and closes it again', async () => {
    asOnAPhone();
    const table = await tableOf();
    const card = await openCard(table, 0);
    const lines = [...card.renderRoot.querySelectorAll('value-line')].map(({ field }) => field?.name);
    expect(lines).to.deep.equal(['product', 'include', 'coverage', 'need']);
    expect(part(card, '.head').getAttribute('aria-expanded')).to.equal('true');
    await openCard(table, 0);
    expect(part(card, '.head').getAttribute('aria-expanded')).to.equal('false');
    expect(card.renderRoot.querySelector('value-line')).to.equal(null);
  });

  it('sends what is typed in a card as an entry of its cell', async () => {
    asOnAPhone();
    const table = await tableOf();
    const sent: unknown[] = [];
    table.addEventListener('cell-entered', (event: SheetEvents['cell-entered']) => sent.push(event.detail));
    const card = await openCard(table, 1);
    const line = [...card.renderRoot.querySelectorAll('value-line')].find(({ field }) => field?.name === 'coverage');
    const input = part<HTMLInputElement>(part<NumberField>(line, 'number-field'), 'input');
    expect(input.labels?.[0]?.textContent).to.equal('The clear, Coverage');
    input.value = '120';
    input.dispatchEvent(new InputEvent('input'));
    input.dispatchEvent(new Event('change'));
    expect(sent).to.deep.equal([{ table: 'coats', row: 'clear', column: 'coverage', value: 120 }]);
  });

  it('moves a row, and gives focus to the neighbour of one that is taken away', async () => {
    asOnAPhone();
    const table = await tableOf();
    const sent: unknown[] = [];
    for (const type of ['row-moved', 'row-removed'] as const)
      table.addEventListener(type, ({ detail }) => sent.push({ type, detail }));
    const card = await openCard(table, 0);
    const [up, down, away] = card.renderRoot.querySelectorAll<HTMLButtonElement>('.actions button');
    up?.click();
    down?.click();
    away?.focus();
    away?.click();
    expect(sent).to.deep.equal([
      { type: 'row-moved', detail: { table: 'coats', row: 'base', to: 1 } },
      { type: 'row-removed', detail: { table: 'coats', row: 'base' } },
    ]);
    await repaint(table, coatTable(['clear', 'second']));
    expect(table.shadowRoot?.activeElement).to.equal(cardsOf(table)[0]);
    expect(cardsOf(table)[0]?.row?.id).to.equal('clear');
  });

  for (const [cards, rows] of [
    ['its card', ['base']],
    ['its title, without cards,', []],
  ] as const)
    it(`says below ${cards} why its rows stay as they are`, async () => {
      asOnAPhone();
      const table = await tableOf(coatTable(rows));
      expect(table.renderRoot.querySelector('[role=alert]')).to.equal(null);
      table.refusals = new Map([
        ['coats', '“Coats” keeps as many rows as it has.'],
        ['areas', '“Areas” keeps at least 1 row.'],
      ]);
      await table.updateComplete;
      const alerts = [...table.renderRoot.querySelectorAll('[role=alert]')].map(({ textContent }) => textContent);
      expect(alerts).to.deep.equal(['“Coats” keeps as many rows as it has.']);
    });

  it('opens the row that was added and gives focus to its first entry', async () => {
    asOnAPhone();
    const table = await tableOf(coatTable(['base']));
    part<HTMLButtonElement>(table, '.add').click();
    await repaint(table, coatTable(['base', 'coat_2']));
    const added = cardsOf(table)[1];
    expect(added?.shadowRoot?.activeElement?.localName).to.equal('value-line');
  });

  for (const scheme of ['light', 'dark'] as const)
    it(`has no fault that axe can find, open and closed: ${scheme}`, async () => {
      asOnAPhone();
      const undress = await withTheme(scheme);
      const table = await tableOf(coatTable(['base', 'clear'], { coverage: { standing: 'changed', standard: '125' } }));
      await expect(table).to.be.accessible();
      await openCard(table, 0);
      await expect(table).to.be.accessible();
      undress();
    });
});

describe('a table on a wide screen', () => {
  it('gives focus to the first entry of the row that was added', async () => {
    const table = await tableOf(coatTable(['base']));
    part<HTMLButtonElement>(table, '.add').click();
    await repaint(table, coatTable(['base', 'coat_2']));
    const active = table.renderRoot.querySelector('sheet-grid')?.shadowRoot?.activeElement;
    expect(active?.closest<HTMLElement>('[data-row]')?.dataset.row).to.equal('coat_2');
    expect(active?.closest<HTMLElement>('[data-column]')?.dataset.column).to.equal('product');
  });

  it('says under its grid why its only row stays', async () => {
    const table = await tableOf(coatTable(['base']));
    table.refusals = new Map([['coats', '“Coats” keeps at least 1 row.']]);
    await table.updateComplete;
    const grid = part<SheetGrid>(table, 'sheet-grid');
    await grid.updateComplete;
    expect(part(grid, '.frame ~ [role=alert]').textContent).to.equal('“Coats” keeps at least 1 row.');
  });

  it('gives focus to “Add a row” when the last row went from under it', async () => {
    const table = await tableOf(coatTable(['base']));
    const grid = part<HTMLElement & { renderRoot: ParentNode }>(table, 'sheet-grid');
    part<HTMLElement>(grid, "[data-column='row-away']").focus();
    await repaint(table, coatTable([]));
    expect(table.shadowRoot?.activeElement?.textContent?.trim()).to.equal('Add a row');
  });

  it('keeps what is done with a row in sight where its columns do not fit', async () => {
    const table = await tableOf(coatTable(['base', 'clear']));
    table.style.width = '300px';
    const grid = part<HTMLElement & { renderRoot: ParentNode }>(table, 'sheet-grid');
    const frame = part<HTMLElement>(grid, '.frame');
    expect(frame.scrollWidth).to.be.greaterThan(frame.clientWidth);
    const away = part<HTMLElement>(grid, "[data-column='row-away']").getBoundingClientRect();
    expect(away.right).to.be.at.most(frame.getBoundingClientRect().right);
  });

  it('shows columns of detail only when every column is asked for', async () => {
    const view = coatTable(['base']);
    const table = await tableOf({
      ...view,
      columns: view.columns.map((column) => ({ ...column, detail: column.name === 'coverage' })),
    });
    const grid = part<HTMLElement & { renderRoot: ParentNode }>(table, 'sheet-grid');
    expect(grid.renderRoot.querySelector("[data-column='coverage']")).to.equal(null);
    part<HTMLButtonElement>(table, '[aria-pressed]').click();
    await repaint(table, { ...view });
    expect(grid.renderRoot.querySelector("[data-column='coverage']")).to.not.equal(null);
  });
});
