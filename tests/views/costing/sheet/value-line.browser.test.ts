import { expect, fixture, html } from '@open-wc/testing';
import type { ValueLine } from '../../../../src/views/costing/sheet/value-line.ts';
import '../../../../src/views/costing/sheet/value-line.ts';
import type { ShownField } from '../../../../src/views/parts/shown-field.ts';
import { withPageInFront } from '../../../helpers/page-focus.ts';
import { withTheme } from '../../../helpers/page-theme.ts';
import { coverageView, needView, numberView } from '../../../helpers/shown-fields.ts';

let leave: () => void;

beforeEach(() => {
  leave = withPageInFront();
});

afterEach(() => leave());

interface Line {
  readonly line: ValueLine;
  readonly sent: { readonly type: string; readonly detail: unknown }[];
}

async function lineOf(field: ShownField): Promise<Line> {
  const line = await fixture<ValueLine>(html`<value-line .field=${field}></value-line>`);
  const sent: { type: string; detail: unknown }[] = [];
  for (const type of ['entered', 'went-back', 'why-asked'])
    line.addEventListener(type, (event) =>
      sent.push({ type, detail: event instanceof CustomEvent ? event.detail : undefined }),
    );
  return { line, sent };
}

function button(line: ValueLine, words: string): HTMLButtonElement {
  const found = [...line.renderRoot.querySelectorAll('button')].find(({ textContent }) => textContent.trim() === words);
  if (found === undefined) throw new Error(`There is no button “${words}”`);
  return found;
}

async function inputOf(line: ValueLine): Promise<HTMLInputElement> {
  await line.updateComplete;
  const field = line.renderRoot.querySelector('number-field');
  await field?.updateComplete;
  const input = field?.renderRoot.querySelector('input');
  if (!input) throw new Error('No number is being typed');
  return input;
}

function type(input: HTMLInputElement, text: string): void {
  input.value = text;
  input.dispatchEvent(new InputEvent('input'));
  input.dispatchEvent(new Event('change'));
}

describe('a line of a sheet', () => {
  it('tells what it was changed from, with the way back', async () => {
    const { line, sent } = await lineOf(coverageView({ standing: 'changed', standard: '125 ft²/gal' }));
    expect(line.renderRoot.textContent).to.contain('changed from our 125 ft²/gal');
    button(line, 'back').click();
    expect(sent.map(({ type }) => type)).to.deep.equal(['went-back']);
  });

  it('has no way back where nothing was changed', async () => {
    const { line } = await lineOf(coverageView());
    expect([...line.renderRoot.querySelectorAll('button')].map(({ textContent }) => textContent.trim())).to.deep.equal([
      'Coverage',
    ]);
    expect(line.renderRoot.textContent).to.contain('not checked yet');
  });

  it('lets a number stand instead of the formula, and says so', async () => {
    const { line, sent } = await lineOf(needView());
    button(line, 'type over it').click();
    const input = await inputOf(line);
    expect(input.getRootNode()).to.have.property('activeElement', input);
    type(input, '5');
    expect(sent).to.deep.equal([{ type: 'entered', detail: { value: 5, instead: true } }]);
  });

  it('keeps the formula on Escape, and keeps a text that cannot be read', async () => {
    const { line, sent } = await lineOf(needView());
    button(line, 'type over it').click();
    const input = await inputOf(line);
    type(input, 'lots');
    await line.updateComplete;
    button(line, 'Need').focus();
    await line.updateComplete;
    expect((await inputOf(line)).value).to.equal('lots');
    input.dispatchEvent(new KeyboardEvent('keydown', { key: 'Escape', bubbles: true, composed: true }));
    await line.updateComplete;
    expect(line.renderRoot.querySelector('number-field')).to.equal(null);
    expect(sent).to.deep.equal([]);
  });

  it('shows what the formula gives crossed out beside the number that stands instead', async () => {
    const { line } = await lineOf(needView({ standing: 'departed', shown: '5', worked: '4.47 gal' }));
    expect(line.renderRoot.querySelector('s')?.textContent).to.contain('4.47 gal');
    expect(line.renderRoot.querySelector('.number')?.textContent).to.contain('5');
    expect(line.renderRoot.textContent).to.contain('typed over the formula');
  });

  it('overrules a yes that a row works out with one touch', async () => {
    const { line, sent } = await lineOf(
      numberView({
        kind: 'result',
        name: 'include',
        label: 'Included',
        standing: 'worked out',
        typeOver: 'answer',
        shown: 'yes',
        typed: '1',
      }),
    );
    button(line, 'say no instead').click();
    expect(sent).to.deep.equal([{ type: 'entered', detail: { value: 0 } }]);
  });

  it('shows the choice in force again when another is refused, with the reason beside it', async () => {
    const grinder = numberView({
      kind: 'choice',
      name: 'grinder',
      label: 'Grinder',
      chosen: 'ride_on',
      shown: 'Ride on',
      options: [
        { code: 'hand', label: 'By hand' },
        { code: 'walk_behind', label: 'Walk behind' },
        { code: 'ride_on', label: 'Ride on' },
      ],
    });
    const { line, sent } = await lineOf(grinder);
    const select = line.renderRoot.querySelector('select');
    if (select === null) throw new Error('Nothing can be chosen');
    expect(select.value).to.equal('ride_on');
    for (const refused of ['hand', 'walk_behind']) {
      select.value = refused;
      select.dispatchEvent(new Event('change'));
      line.refusal = 'This quote is open in another tab.';
      await line.updateComplete;
      expect(select.value).to.equal('ride_on');
    }
    const error = line.renderRoot.querySelector('[role=alert]');
    expect(error?.textContent?.trim()).to.equal('This quote is open in another tab. Ride on still counts.');
    expect(select.getAttribute('aria-describedby')).to.equal(error?.id);
    expect(sent.length).to.equal(2);
  });

  for (const scheme of ['light', 'dark'] as const)
    it(`has no fault that axe can find, changed and departed: ${scheme}`, async () => {
      const undress = await withTheme(scheme);
      const { line: changed } = await lineOf(coverageView({ standing: 'changed', standard: '125 ft²/gal' }));
      await expect(changed).to.be.accessible();
      const { line: departed } = await lineOf(needView({ standing: 'departed', worked: '4.47 gal' }));
      await expect(departed).to.be.accessible();
      undress();
    });
});
