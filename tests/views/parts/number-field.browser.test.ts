import { expect, fixture, html } from '@open-wc/testing';
import '../../../src/views/parts/number-field.ts';
import type { NumberField } from '../../../src/views/parts/number-field.ts';
import type { EntryDetail } from '../../../src/views/parts/typed-entry.ts';
import { withPageInFront } from '../../helpers/page-focus.ts';
import { unit } from '../../helpers/shown-fields.ts';

let leave: () => void;

beforeEach(() => {
  leave = withPageInFront();
});

afterEach(() => leave());

async function fieldIn(
  unitText: string,
  text: string,
): Promise<{ field: NumberField; input: HTMLInputElement; entered: EntryDetail[] }> {
  const entered: EntryDetail[] = [];
  const field = await fixture<NumberField>(html`<number-field
    label="Length"
    .unit=${unit(unitText)}
    text=${text}
    suffix=${unitText}
    @entered=${(event: CustomEvent<EntryDetail>) => entered.push(event.detail)}
  ></number-field>`);
  const input = field.renderRoot.querySelector('input');
  if (input === null) throw new Error('The field has no input');
  return { field, input, entered };
}

async function type(field: NumberField, input: HTMLInputElement, text: string): Promise<void> {
  input.value = text;
  input.dispatchEvent(new InputEvent('input'));
  await field.updateComplete;
  input.dispatchEvent(new Event('change'));
  await field.updateComplete;
}

describe('a number field', () => {
  it('reads 22\' 6" as 22.5 ft and keeps what was typed', async () => {
    const { field, input, entered } = await fieldIn('ft', '24');
    await type(field, input, `22' 6"`);
    expect(entered).to.deep.equal([{ value: 22.5, typed: `22' 6"` }]);
  });

  it('reads 8 in a share as 0.08', async () => {
    const { field, input, entered } = await fieldIn('%', '5');
    await type(field, input, '8');
    expect(entered).to.deep.equal([{ value: 0.08 }]);
  });

  it('echoes how it reads feet and inches while they are typed', async () => {
    const { field, input } = await fieldIn('ft', '24');
    input.value = '22 7';
    input.dispatchEvent(new InputEvent('input'));
    await field.updateComplete;
    expect(field.renderRoot.textContent).to.contain('22 ft 7 in');
  });

  it('keeps unreadable text in the field with the reason, and enters nothing', async () => {
    const { field, input, entered } = await fieldIn('ft', '24');
    await type(field, input, 'two dozen');
    expect(entered).to.deep.equal([]);
    expect(input.value).to.equal('two dozen');
    expect(input.getAttribute('aria-invalid')).to.equal('true');
    expect(field.renderRoot.querySelector('.error')?.textContent).to.not.equal('');
  });

  it('never reads an emptied field as 0', async () => {
    const { field, input, entered } = await fieldIn('ft', '24');
    await type(field, input, '');
    expect(entered).to.deep.equal([]);
    expect(input.getAttribute('aria-invalid')).to.equal('true');
  });

  it('gives back the value in force on Escape', async () => {
    const { field, input } = await fieldIn('ft', '24');
    await type(field, input, 'nonsense');
    input.dispatchEvent(new KeyboardEvent('keydown', { key: 'Escape' }));
    await field.updateComplete;
    expect(input.value).to.equal('24');
    expect(input.getAttribute('aria-invalid')).to.equal('false');
  });

  it('is not written to while it has focus, and shows the value in force once that is gone', async () => {
    const { field, input } = await fieldIn('ft', '24');
    input.focus();
    field.text = '30';
    await field.updateComplete;
    expect(input.value).to.equal('24');
    // A fixture would wait for a frame, which a page behind another never gets.
    const elsewhere = document.createElement('button');
    field.after(elsewhere);
    elsewhere.focus();
    await field.updateComplete;
    expect(input.value).to.equal('30');
  });

  it('keeps a text that is refused, with the reason and what still counts', async () => {
    const { field, input } = await fieldIn('ft', '24');
    await type(field, input, '-5');
    field.refusal = 'It must lie between 0 and 2000.';
    await field.updateComplete;
    field.refusal = '';
    await field.updateComplete;
    expect(input.value).to.equal('-5');
    expect(field.renderRoot.querySelector('.error')?.textContent)
      .to.contain('between 0 and 2000')
      .and.to.contain('24 ft');
  });

  it('tells what is usual and what may be entered while it has focus', async () => {
    const { field, input } = await fieldIn('ft', '24');
    field.hint = '0 to 2,000 ft may be entered.';
    await field.updateComplete;
    expect(field.renderRoot.textContent).to.not.contain('2,000');
    input.focus();
    await field.updateComplete;
    expect(field.renderRoot.querySelector('#said')?.textContent).to.contain('2,000 ft');
    expect(input.getAttribute('aria-describedby')).to.contain('said');
  });

  it('offers feet and inches for a length, at the caret, and leaves focus in the field', async () => {
    const { field, input, entered } = await fieldIn('ft', '22');
    input.focus();
    await field.updateComplete;
    const key = (name: string): HTMLButtonElement | null => field.renderRoot.querySelector(`[aria-label='${name}']`);
    key('feet')?.click();
    input.setRangeText(' 6', input.value.length, input.value.length, 'end');
    key('inches')?.click();
    await field.updateComplete;
    expect(input.value).to.equal('22′ 6″');
    expect(field.renderRoot.querySelector('.echo')?.textContent).to.contain('22.5 ft');
    const down = new PointerEvent('pointerdown', { bubbles: true, cancelable: true });
    key('plus')?.dispatchEvent(down);
    expect(down.defaultPrevented).to.equal(true);
    input.dispatchEvent(new Event('change'));
    expect(entered).to.deep.equal([{ value: 22.5, typed: '22′ 6″' }]);
  });

  it('offers no feet and inches where they have no meaning', async () => {
    const { field, input } = await fieldIn('%', '5');
    input.focus();
    await field.updateComplete;
    expect(
      [...field.renderRoot.querySelectorAll('.signs button')].map(({ textContent }) => textContent.trim()),
    ).to.deep.equal(['/', '+', '×']);
  });

  it('reads 22,5 as 22.5', async () => {
    const { field, input, entered } = await fieldIn('ft', '24');
    await type(field, input, '22,5');
    expect(entered).to.deep.equal([{ value: 22.5, typed: '22,5' }]);
  });

  it('says no unit twice: $41.50/h stands as $ 41.50 /h, and so does what still counts', async () => {
    const { field, input } = await fieldIn('$/h', '$41.50/h');
    field.lead = '$';
    field.suffix = '/h';
    await field.updateComplete;
    expect(input.value).to.equal('41.50');
    await type(field, input, '$999');
    field.refusal = '“Wage” must lie between $0.00 and $500.00/h; $999.00/h does not.';
    await field.updateComplete;
    expect(input.value).to.equal('999');
    expect(field.renderRoot.querySelector('.error')?.textContent).to.contain('does not. $41.50/h still counts.');
  });

  it('tells how it was typed while it has focus, where it shows that otherwise', async () => {
    const { field, input } = await fieldIn('%', '8 percent');
    expect(input.value).to.equal('8');
    input.focus();
    await field.updateComplete;
    expect(field.renderRoot.querySelector('#said')?.textContent).to.contain('Typed as 8 percent.');
    await type(field, input, 'lots');
    expect(field.renderRoot.textContent).to.not.contain('Typed as');
  });

  it('leaves 76\' 6" as it is, with no ft behind it, once it is entered', async () => {
    const { field, input } = await fieldIn('ft', '24');
    const suffix = () => field.renderRoot.querySelector('#unit')?.textContent;
    input.focus();
    await type(field, input, `76' 6"`);
    field.text = `76' 6"`;
    await field.updateComplete;
    expect([input.value, suffix()]).to.deep.equal([`76' 6"`, '']);
    await type(field, input, '-5');
    field.refusal = 'It must lie between 0 and 2,000 ft.';
    await field.updateComplete;
    expect(suffix()).to.equal('ft');
    expect(field.renderRoot.querySelector('.error')?.textContent).to.contain(`76' 6" still counts.`);
  });

  it('drops a refused text with its reason when the measures change, and tells the same reason again later', async () => {
    const { field, input } = await fieldIn('ft', '24');
    const error = () => field.renderRoot.querySelector('.error');
    await type(field, input, '-5');
    field.refusal = 'It must lie between 0 and 2,000 ft; −5 ft does not.';
    await field.updateComplete;
    expect(error()).to.not.equal(null);
    field.measures = 'metric';
    field.text = '7.32';
    await field.updateComplete;
    expect(error()).to.equal(null);
    expect([input.value, input.getAttribute('aria-invalid')]).to.deep.equal(['7.32', 'false']);
    field.measures = 'us';
    field.text = '24';
    await field.updateComplete;
    await type(field, input, '-5');
    expect(error()?.textContent).to.contain('−5 ft does not');
  });

  it('has a label and no fault that axe can find', async () => {
    const { field } = await fieldIn('ft', '24');
    await expect(field).to.be.accessible();
  });
});

describe('a number field of ft in metric', () => {
  async function fieldInMetres(text: string) {
    const entered: EntryDetail[] = [];
    const field = await fixture<NumberField>(html`<number-field
      label="Length"
      .unit=${unit('ft')}
      measures="metric"
      text=${text}
      suffix="m"
      @entered=${(event: CustomEvent<EntryDetail>) => entered.push(event.detail)}
    ></number-field>`);
    const input = field.renderRoot.querySelector('input');
    if (input === null) throw new Error('The field has no input');
    return { field, input, entered };
  }

  it('reads 6.096 as metres and sends 20 ft, and keeps what was typed', async () => {
    const { field, input, entered } = await fieldInMetres('7.3152');
    await type(field, input, '6.096');
    expect(entered).to.deep.equal([{ value: 20, typed: '6.096 m' }]);
  });

  it('still reads 22\' 6", echoed as 6.858 m, and keeps 3*2 with its unit', async () => {
    const { field, input, entered } = await fieldInMetres('7.3152');
    input.value = `22' 6"`;
    input.dispatchEvent(new InputEvent('input'));
    await field.updateComplete;
    expect(field.renderRoot.textContent).to.contain(`22' 6" = 6.858 m`);
    input.dispatchEvent(new Event('change'));
    await type(field, input, '3*2');
    expect(entered[0]).to.deep.equal({ value: 22.5, typed: `22' 6"` });
    expect(entered[1]?.typed).to.equal('3*2 m');
  });

  it('offers no keys for feet and inches', async () => {
    const { field, input } = await fieldInMetres('7.3152');
    input.focus();
    await field.updateComplete;
    const keys = [...field.renderRoot.querySelectorAll('.signs button')].map((key) => key.getAttribute('aria-label'));
    expect(keys).to.include('plus');
    expect(keys).to.not.include('feet');
  });
});
