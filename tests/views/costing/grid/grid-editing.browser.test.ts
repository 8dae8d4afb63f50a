import { expect } from '@open-wc/testing';
import { button, cellOf, editorOf, focus, focused, gridOf, press, repaint, write } from '../../../helpers/grid-page.ts';
import { withPageInFront } from '../../../helpers/page-focus.ts';
import { coatTable } from '../../../helpers/shown-fields.ts';

let leave: () => void;

beforeEach(() => {
  leave = withPageInFront();
});

afterEach(() => leave());

describe('editing in a grid', () => {
  it('begins with the character typed, and Enter sends 120 and goes back to the cell', async () => {
    const { grid, sent } = await gridOf();
    await focus(grid, 'base', 'coverage');
    await press(grid, '1');
    expect(editorOf(grid).value).to.equal('1');
    await write(grid, '120');
    await press(grid, 'Enter');
    expect(sent).to.deep.equal([
      { type: 'cell-entered', detail: { table: 'coats', row: 'base', column: 'coverage', value: 120 } },
    ]);
    expect(focused(grid)).to.equal('base.coverage');
    expect(grid.renderRoot.querySelector('.editor')).to.equal(null);
  });

  it('begins with what stands, selected, on Enter, F2 and a click', async () => {
    const { grid } = await gridOf();
    const begun: string[] = [];
    for (const begin of ['Enter', 'F2', 'click']) {
      await focus(grid, 'base', 'coverage');
      if (begin === 'click') cellOf(grid, 'base', 'coverage').click();
      else await press(grid, begin);
      await grid.updateComplete;
      const editor = editorOf(grid);
      begun.push(editor instanceof HTMLInputElement ? editor.value.slice(editor.selectionStart ?? 0) : '');
      await press(grid, 'Escape');
    }
    expect(begun).to.deep.equal(['134', '134', '134']);
  });

  it('gives back the value on Escape and sends nothing', async () => {
    const { grid, sent } = await gridOf();
    await focus(grid, 'base', 'coverage');
    await press(grid, '9');
    await press(grid, 'Escape');
    expect(cellOf(grid, 'base', 'coverage').textContent).to.contain('134');
    expect(focused(grid)).to.equal('base.coverage');
    expect(sent).to.deep.equal([]);
  });

  it('sends nothing when nothing was changed', async () => {
    const { grid, sent } = await gridOf();
    await focus(grid, 'base', 'coverage');
    await press(grid, 'Enter');
    await press(grid, 'Enter');
    expect(sent).to.deep.equal([]);
  });

  it('goes on to the next entry with Tab, over results, and back with Shift and Tab', async () => {
    const { grid, sent } = await gridOf();
    await focus(grid, 'base', 'coverage');
    await press(grid, '9');
    await press(grid, 'Tab');
    expect(focused(grid)).to.equal('clear.product');
    await focus(grid, 'clear', 'coverage');
    await press(grid, '8');
    await press(grid, 'Tab', { shiftKey: true });
    expect(focused(grid)).to.equal('clear.include');
    expect(sent.length).to.equal(2);
  });

  it('takes what was typed when focus leaves', async () => {
    const { grid, sent } = await gridOf();
    await focus(grid, 'base', 'coverage');
    await press(grid, '9');
    await focus(grid, 'clear', 'need');
    expect(sent.map(({ type }) => type)).to.deep.equal(['cell-entered']);
    expect(focused(grid)).to.equal('clear.need');
  });

  it('keeps a text that cannot be read at its cell, with the reason and what still counts', async () => {
    const { grid, sent } = await gridOf();
    await focus(grid, 'base', 'coverage');
    await press(grid, 'w');
    await write(grid, 'wide');
    await press(grid, 'Tab');
    const cell = cellOf(grid, 'base', 'coverage');
    const fault = grid.renderRoot.querySelector('[role=alert]');
    expect(sent).to.deep.equal([]);
    expect(cell.textContent).to.contain('wide');
    expect(cell.getAttribute('aria-invalid')).to.equal('true');
    expect(cell.getAttribute('aria-describedby')?.split(' ')).to.include(fault?.id ?? 'no fault');
    expect(fault?.textContent).to.contain('The base, Coverage').and.to.contain('134 ft²/gal still counts');
    await focus(grid, 'base', 'coverage');
    await press(grid, 'Escape');
    expect(cell.textContent).to.contain('134');
    expect(cell.hasAttribute('aria-invalid')).to.equal(false);
  });

  it('stays in the field on Enter while the text cannot be read', async () => {
    const { grid } = await gridOf();
    await focus(grid, 'base', 'coverage');
    await press(grid, 'w');
    await press(grid, 'Enter');
    expect(editorOf(grid).value).to.equal('w');
    expect(editorOf(grid).getAttribute('aria-invalid')).to.equal('true');
    expect(grid.shadowRoot?.activeElement).to.equal(editorOf(grid));
  });

  it('keeps a text that is refused, with the reason', async () => {
    const { grid } = await gridOf();
    await focus(grid, 'base', 'coverage');
    await press(grid, '9');
    await write(grid, '9000');
    await press(grid, 'Enter');
    grid.refusals = new Map([['coats.base.coverage', 'It must lie between 1 and 2000.']]);
    await grid.updateComplete;
    grid.refusals = new Map();
    await grid.updateComplete;
    expect(cellOf(grid, 'base', 'coverage').textContent).to.contain('9000');
    expect(grid.renderRoot.querySelector('[role=alert]')?.textContent).to.contain('between 1 and 2000');
  });

  it('shows the choice in force when another is refused, and says which counts', async () => {
    const { grid, sent } = await gridOf();
    await focus(grid, 'base', 'product');
    await press(grid, 'Enter');
    const select = editorOf(grid);
    select.value = 'gloss';
    select.dispatchEvent(new Event('change'));
    expect(sent.length).to.equal(1);
    grid.refusals = new Map([['coats.base.product', 'This quote is open in another tab.']]);
    await grid.updateComplete;
    const cell = cellOf(grid, 'base', 'product');
    expect(cell.textContent).to.contain('Invented base, slate').and.not.to.contain('gloss');
    expect(cell.hasAttribute('aria-invalid')).to.equal(false);
    const fault = grid.renderRoot.querySelector('[role=alert]')?.textContent?.replace(/\s+/g, ' ').trim();
    expect(fault).to.equal('The base, Product: This quote is open in another tab. Invented base, slate still counts.');
    await press(grid, 'Enter');
    expect(editorOf(grid).value).to.equal('slate');
  });

  it('is not disturbed by a repaint', async () => {
    const { grid } = await gridOf();
    await focus(grid, 'base', 'coverage');
    await press(grid, '9');
    const editor = editorOf(grid);
    await repaint(grid, coatTable(['base', 'clear', 'second'], { need: { shown: '5.1' } }));
    expect(editorOf(grid)).to.equal(editor);
    expect(editor.value).to.equal('9');
    expect(grid.shadowRoot?.activeElement).to.equal(editor);
  });
});

describe('the way back in a grid', () => {
  const changed = coatTable(['base'], { coverage: { standing: 'changed', standard: '125 ft²/gal' } });
  const departed = coatTable(['base'], { need: { standing: 'departed', worked: '4.47 gal' } });
  const reset = (column: string): unknown => ({ type: 'cell-reset', detail: { table: 'coats', row: 'base', column } });

  it('marks a changed cell, and tells standard, source, range and limits when it has focus', async () => {
    const { grid } = await gridOf(changed);
    const mark = cellOf(grid, 'base', 'coverage').querySelector('.mark');
    expect(mark?.getAttribute('title')).to.equal('changed from our 125 ft²/gal');
    await focus(grid, 'base', 'coverage');
    const note = grid.renderRoot.querySelector('.note')?.textContent?.replace(/\s+/g, ' ');
    for (const words of ['changed from our 125', 'common practice', 'likely 134', '1 to 2,000 ft²/gal'])
      expect(note).to.contain(words);
  });

  it('leads back with Delete, and with the button, which returns focus to the cell', async () => {
    const { grid, sent } = await gridOf(changed);
    await focus(grid, 'base', 'coverage');
    await press(grid, 'Delete');
    button(grid, 'Back to 125 ft²/gal').click();
    await grid.updateComplete;
    expect(sent).to.deep.equal([reset('coverage'), reset('coverage')]);
    expect(focused(grid)).to.equal('base.coverage');
  });

  it('resets nothing that was not changed', async () => {
    const { grid, sent } = await gridOf();
    await focus(grid, 'base', 'coverage');
    await press(grid, 'Delete');
    expect(sent).to.deep.equal([]);
  });

  it('lets a number stand instead of a formula by a deliberate act only', async () => {
    const { grid, sent } = await gridOf();
    await focus(grid, 'base', 'need');
    await press(grid, '5');
    await press(grid, 'F2');
    expect(grid.renderRoot.querySelector('.editor')).to.equal(null);
    button(grid, 'Type over it').click();
    await grid.updateComplete;
    await write(grid, '5');
    await press(grid, 'Enter');
    expect(sent).to.deep.equal([
      { type: 'cell-entered', detail: { table: 'coats', row: 'base', column: 'need', value: 5, instead: true } },
    ]);
  });

  it('shows what the formula gives crossed out, and leads back to it', async () => {
    const { grid, sent } = await gridOf(departed);
    expect(cellOf(grid, 'base', 'need').querySelector('s')?.textContent).to.contain('4.47 gal');
    await focus(grid, 'base', 'need');
    button(grid, 'Back to the formula').click();
    expect(sent).to.deep.equal([reset('need')]);
  });
});

describe('a grid in metric', () => {
  it('reads 3.2887 as m²/L and sends 134 ft²/gal, with the fourth digit of it', async () => {
    const table = coatTable(['base'], {
      coverage: { measures: 'metric', shown: '3.289', typed: '3.289', suffix: 'm²/L' },
    });
    const { grid, sent } = await gridOf(table);
    await focus(grid, 'base', 'coverage');
    expect(cellOf(grid, 'base', 'coverage').textContent).to.contain('m²/L');
    await press(grid, '3');
    await write(grid, '3.2887');
    await press(grid, 'Enter');
    const [{ detail } = { detail: undefined }] = sent;
    expect(sent.length).to.equal(1);
    expect(Number(Object(detail).value)).to.be.closeTo(134, 0.001);
  });

  it('sends nothing when the metric number is left as it was', async () => {
    const table = coatTable(['base'], {
      coverage: { measures: 'metric', shown: '3.289', typed: '3.289', suffix: 'm²/L' },
    });
    const { grid, sent } = await gridOf(table);
    await focus(grid, 'base', 'coverage');
    await press(grid, 'Enter');
    await press(grid, 'Enter');
    expect(sent).to.deep.equal([]);
  });
});
