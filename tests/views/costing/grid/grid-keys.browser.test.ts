import { expect } from '@open-wc/testing';
import { cellOf, editorOf, focus, focused, gridOf, press, repaint } from '../../../helpers/grid-page.ts';
import { withPageInFront } from '../../../helpers/page-focus.ts';
import { coatTable } from '../../../helpers/shown-fields.ts';

let leave: () => void;

beforeEach(() => {
  leave = withPageInFront();
});

afterEach(() => leave());

describe('the keys of a grid', () => {
  it('keep one tab stop, which follows focus', async () => {
    const { grid } = await gridOf();
    const stops = (): string[] =>
      [...grid.renderRoot.querySelectorAll<HTMLElement>("[tabindex='0']")].map(
        (stop) =>
          `${stop.closest<HTMLElement>('[data-row]')?.dataset.row}.${stop.closest<HTMLElement>('[data-column]')?.dataset.column}`,
      );
    expect(stops()).to.deep.equal(['base.coat']);
    await focus(grid, 'clear', 'include');
    expect(stops()).to.deep.equal(['clear.include']);
  });

  it('move between cells, and stay at the edges', async () => {
    const { grid } = await gridOf();
    await focus(grid, 'base', 'coat');
    const walk: string[] = [];
    for (const key of ['ArrowLeft', 'ArrowUp', 'ArrowRight', 'ArrowDown', 'End', 'Home', 'PageDown', 'PageUp']) {
      await press(grid, key);
      walk.push(`${key} ${focused(grid)}`);
    }
    expect(walk).to.deep.equal([
      'ArrowLeft base.coat',
      'ArrowUp base.coat',
      'ArrowRight base.product',
      'ArrowDown clear.product',
      'End clear.row-away',
      'Home clear.coat',
      'PageDown second.coat',
      'PageUp base.coat',
    ]);
    await press(grid, 'End', { ctrlKey: true });
    expect(focused(grid)).to.equal('second.row-away');
    await press(grid, 'Home', { ctrlKey: true });
    expect(focused(grid)).to.equal('base.coat');
  });

  it('walk over a row’s actions, also over one that the first row has no use for', async () => {
    const { grid } = await gridOf();
    await focus(grid, 'base', 'need');
    const walk: string[] = [];
    for (const key of ['ArrowRight', 'ArrowRight', 'ArrowRight', 'ArrowRight', 'ArrowLeft']) {
      await press(grid, key);
      walk.push(focused(grid));
    }
    expect(walk).to.deep.equal(['base.row-up', 'base.row-down', 'base.row-away', 'base.row-away', 'base.row-down']);
  });

  it('leave the keys of the page alone', async () => {
    const { grid } = await gridOf();
    await focus(grid, 'base', 'coverage');
    expect((await press(grid, 'z', { ctrlKey: true })).defaultPrevented).to.equal(false);
    expect((await press(grid, 'Tab')).defaultPrevented).to.equal(false);
    expect(grid.renderRoot.querySelector('.editor')).to.equal(null);
  });

  it('ask why on a result with Enter', async () => {
    const { grid, sent } = await gridOf();
    await focus(grid, 'base', 'need');
    await press(grid, 'Enter');
    expect(sent).to.deep.equal([{ type: 'why-asked', detail: { cell: 7 } }]);
  });

  it('turn a yes into a no with Enter, and with a click', async () => {
    const { grid, sent } = await gridOf();
    await focus(grid, 'base', 'include');
    await press(grid, 'Enter');
    cellOf(grid, 'base', 'include').querySelector('input')?.click();
    const no = { type: 'cell-entered', detail: { table: 'coats', row: 'base', column: 'include', value: 0 } };
    expect(sent).to.deep.equal([no, no]);
  });

  it('open the choices with Enter and with Alt and down, and take the one chosen', async () => {
    const { grid, sent } = await gridOf();
    await focus(grid, 'base', 'product');
    await press(grid, 'ArrowDown', { altKey: true });
    expect(editorOf(grid)).to.be.instanceOf(HTMLSelectElement);
    await press(grid, 'Escape');
    expect(focused(grid)).to.equal('base.product');
    await press(grid, 'Enter');
    const select = editorOf(grid);
    select.value = 'gloss';
    select.dispatchEvent(new Event('change', { bubbles: true }));
    await grid.updateComplete;
    expect(sent).to.deep.equal([
      { type: 'cell-entered', detail: { table: 'coats', row: 'base', column: 'product', value: 'gloss' } },
    ]);
    expect(focused(grid)).to.equal('base.product');
  });

  it('move a row and take it away, and not beyond the ends', async () => {
    const { grid, sent } = await gridOf();
    await focus(grid, 'base', 'row-up');
    cellOf(grid, 'base', 'row-up').click();
    cellOf(grid, 'base', 'row-down').click();
    cellOf(grid, 'clear', 'row-away').click();
    expect(sent).to.deep.equal([
      { type: 'row-moved', detail: { table: 'coats', row: 'base', to: 1 } },
      { type: 'row-removed', detail: { table: 'coats', row: 'clear' } },
    ]);
  });
});

describe('focus in a grid', () => {
  it('stays on its cell when numbers change and rows change places', async () => {
    const { grid } = await gridOf();
    await focus(grid, 'clear', 'coverage');
    await repaint(grid, coatTable(['second', 'clear', 'base'], { need: { shown: '5.1' } }));
    expect(focused(grid)).to.equal('clear.coverage');
    await repaint(grid, coatTable(['clear', 'second', 'base']));
    expect(focused(grid)).to.equal('clear.coverage');
  });

  it('goes to the neighbour when its row goes, to the last row when it was the last', async () => {
    const { grid } = await gridOf();
    await focus(grid, 'clear', 'row-away');
    await repaint(grid, coatTable(['base', 'second']));
    expect(focused(grid)).to.equal('second.row-away');
    await repaint(grid, coatTable(['base']));
    expect(focused(grid)).to.equal('base.row-away');
  });

  it('is not pulled in by a repaint when it was elsewhere', async () => {
    const { grid } = await gridOf();
    await repaint(grid, coatTable(['base']));
    expect(grid.shadowRoot?.activeElement).to.equal(null);
  });

  it('says when the last row went from under it', async () => {
    const { grid } = await gridOf(coatTable(['base']));
    let emptied = 0;
    grid.addEventListener('emptied', () => {
      emptied += 1;
    });
    await focus(grid, 'base', 'coverage');
    await repaint(grid, coatTable([]));
    expect(emptied).to.equal(1);
  });
});
