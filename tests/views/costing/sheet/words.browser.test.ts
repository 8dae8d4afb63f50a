import { expect, fixture, html } from '@open-wc/testing';
import type { ValueLine } from '../../../../src/views/costing/sheet/value-line.ts';
import '../../../../src/views/costing/sheet/value-line.ts';
import '../../../../src/views/costing/grid/row-card.ts';
import type { RowCard } from '../../../../src/views/costing/grid/row-card.ts';
import type { ShownTable } from '../../../../src/views/costing/sheet/shown-table.ts';
import type { ShownField } from '../../../../src/views/parts/shown-field.ts';
import { cellOf, editorOf, focus, focused, gridOf, press, repaint, write } from '../../../helpers/grid-page.ts';
import { withPageInFront } from '../../../helpers/page-focus.ts';
import { numberView } from '../../../helpers/shown-fields.ts';

let leave: () => void;

beforeEach(() => {
  leave = withPageInFront();
});

afterEach(() => leave());

function wordsView(words: string, parts: Partial<ShownField> = {}): ShownField {
  const standing = words === '' ? 'unchecked' : 'changed';
  const own = { name: 'taken_by', label: 'Read by', cell: undefined, shown: words, typed: words, standing } as const;
  return numberView({ kind: 'words', ...own, ...parts });
}

function testsTable(words: string): ShownTable {
  const rowName = numberView({ kind: 'result', name: 'spot', label: 'Test', shown: 'Dish', typed: '' });
  return {
    name: 'tests',
    title: 'Tests',
    free: false,
    columns: [
      { name: 'spot', label: 'Test', group: '', detail: false, words: true },
      { name: 'taken_by', label: 'Read by', group: '', detail: false, words: true },
    ],
    rows: [{ id: 'dish', label: 'Dish', fields: [rowName, wordsView(words)] }],
    note: '',
    telling: [],
  };
}

interface Line {
  readonly line: ValueLine;
  readonly input: HTMLInputElement;
  readonly sent: { readonly type: string; readonly detail: unknown }[];
}

async function lineOf(field: ShownField): Promise<Line> {
  const line = await fixture<ValueLine>(html`<value-line .field=${field}></value-line>`);
  const sent: { type: string; detail: unknown }[] = [];
  for (const type of ['entered', 'went-back'])
    line.addEventListener(type, (event) =>
      sent.push({ type, detail: event instanceof CustomEvent ? (event.detail ?? undefined) : undefined }),
    );
  const words = line.renderRoot.querySelector('words-field');
  await words?.updateComplete;
  const input = words?.renderRoot.querySelector('input');
  if (!input) throw new Error('There is no field for words');
  return { line, input, sent };
}

async function commit({ line, input }: Line, text: string): Promise<void> {
  input.value = text;
  input.dispatchEvent(new InputEvent('input'));
  input.dispatchEvent(new Event('change'));
  await line.renderRoot.querySelector('words-field')?.updateComplete;
}

const errorOf = ({ line }: Line): string =>
  line.renderRoot.querySelector('words-field')?.renderRoot.querySelector('.error')?.textContent.trim() ?? '';

describe('a line for words', () => {
  it('has a label of its own, says that nothing is said, and sends what is written without spaces at its ends', async () => {
    const written = await lineOf(wordsView(''));
    expect(written.input.labels?.[0]?.textContent).to.equal('Read by');
    expect(written.input.placeholder).to.equal('not said');
    expect(written.line.renderRoot.textContent).not.to.contain('not checked');
    await commit(written, '  Dana R. ');
    expect(written.sent).to.deep.equal([{ type: 'entered', detail: { value: 'Dana R.', written: true } }]);
  });

  it('keeps 81 characters in the field with the reason, sends nothing, and Escape gives back the words in force', async () => {
    const written = await lineOf(wordsView('Dana R.'));
    const long = 'x'.repeat(81);
    await commit(written, long);
    expect(written.input.value).to.equal(long);
    expect(errorOf(written)).to.equal('At most 80 characters may stand here; these are 81. “Dana R.” still counts.');
    expect(written.input.getAttribute('aria-invalid')).to.equal('true');
    expect(written.sent).to.deep.equal([]);
    written.input.dispatchEvent(new KeyboardEvent('keydown', { key: 'Escape', bubbles: true }));
    await written.line.renderRoot.querySelector('words-field')?.updateComplete;
    expect(written.input.value).to.equal('Dana R.');
    expect(errorOf(written)).to.equal('');
  });

  it('takes no control characters', async () => {
    const written = await lineOf(wordsView(''));
    await commit(written, 'Dana\u0007R.');
    expect(errorOf(written)).to.equal('Only plain text in one line may stand here. Nothing is said yet.');
    expect(written.sent).to.deep.equal([]);
  });

  it('keeps what was typed when it is refused from above', async () => {
    const written = await lineOf(wordsView('Dana R.'));
    await commit(written, 'Ari K.');
    written.line.refusal = 'This quote is open in another tab.';
    await written.line.updateComplete;
    await written.line.renderRoot.querySelector('words-field')?.updateComplete;
    expect(written.input.value).to.equal('Ari K.');
    expect(errorOf(written)).to.equal('This quote is open in another tab. “Dana R.” still counts.');
    expect(written.line.renderRoot.querySelector('#refused')).to.equal(null);
  });

  it('has the way back to nothing said', async () => {
    const { line, sent } = await lineOf(wordsView('Dana R.'));
    const back = line.renderRoot.querySelector<HTMLButtonElement>('button.quiet');
    expect(back?.getAttribute('aria-label')).to.equal('Read by: back to not said');
    expect(line.renderRoot.textContent).to.contain('written here');
    back?.click();
    expect(sent).to.deep.equal([{ type: 'went-back', detail: undefined }]);
  });

  it('shows text that looks like markup as text', async () => {
    const { input, line } = await lineOf(wordsView('<b>Dana</b>'));
    expect(input.value).to.equal('<b>Dana</b>');
    expect(line.renderRoot.querySelector('b')).to.equal(null);
  });
});

describe('a column for words', () => {
  it('begins with the character typed, takes spaces, and Enter sends what is written', async () => {
    const { grid, sent } = await gridOf(testsTable(''));
    await focus(grid, 'dish', 'taken_by');
    expect(cellOf(grid, 'dish', 'taken_by').textContent).to.contain('not said');
    await press(grid, 'D');
    const editor = editorOf(grid);
    expect(editor.value).to.equal('D');
    expect(editor.getAttribute('inputmode')).to.equal('text');
    expect(grid.renderRoot.querySelector('.signs')).to.equal(null);
    const space = await press(grid, ' ');
    expect(space.defaultPrevented).to.equal(false);
    await write(grid, 'Dana R. ');
    await press(grid, 'Enter');
    const cell = { table: 'tests', row: 'dish', column: 'taken_by' };
    expect(sent).to.deep.equal([{ type: 'cell-entered', detail: { ...cell, value: 'Dana R.', written: true } }]);
    expect(focused(grid)).to.equal('dish.taken_by');
  });

  it('keeps what cannot be taken at its cell, with the reason and what still counts', async () => {
    const { grid, sent } = await gridOf(testsTable('Dana R.'));
    await focus(grid, 'dish', 'taken_by');
    await press(grid, 'Enter');
    expect(editorOf(grid).value).to.equal('Dana R.');
    const long = 'x'.repeat(81);
    await write(grid, long);
    await press(grid, 'Enter');
    expect(editorOf(grid).value).to.equal(long);
    expect(grid.renderRoot.querySelector('.error')?.textContent.trim().replaceAll(/\s+/g, ' ')).to.equal(
      'Dish, Read by: At most 80 characters may stand here; these are 81. Dana R. still counts.',
    );
    expect(sent).to.deep.equal([]);
  });

  it('goes back with Delete, and shows nothing said then', async () => {
    const { grid, sent } = await gridOf(testsTable('Dana R.'));
    await focus(grid, 'dish', 'taken_by');
    expect(grid.renderRoot.querySelector('.note')?.textContent).to.contain('written here');
    await press(grid, 'Delete');
    expect(sent).to.deep.equal([{ type: 'cell-reset', detail: { table: 'tests', row: 'dish', column: 'taken_by' } }]);
    await repaint(grid, testsTable(''));
    expect(cellOf(grid, 'dish', 'taken_by').textContent).to.contain('not said');
    await press(grid, 'Delete');
    expect(sent).to.have.length(1);
  });

  it('is written on the card of a phone too', async () => {
    const table = testsTable('');
    const card = await fixture<RowCard>(html`<row-card .table=${table} .row=${table.rows[0]}></row-card>`);
    const sent: unknown[] = [];
    card.addEventListener('cell-entered', ({ detail }) => sent.push(detail));
    card.unfold();
    await card.updateComplete;
    const line = card.renderRoot.querySelector('value-line');
    await line?.updateComplete;
    const field = line?.renderRoot.querySelector('words-field');
    await field?.updateComplete;
    const input = field?.renderRoot.querySelector('input');
    expect(field?.shadowRoot?.activeElement).to.equal(input);
    if (!input) throw new Error('The card has no field for words');
    input.value = 'Dana R.';
    input.dispatchEvent(new InputEvent('input'));
    input.dispatchEvent(new Event('change'));
    expect(sent).to.deep.equal([{ table: 'tests', row: 'dish', column: 'taken_by', value: 'Dana R.', written: true }]);
  });
});
