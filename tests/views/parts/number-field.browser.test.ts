import { expect, fixture, html } from '@open-wc/testing';
import { parseUnit, type Unit } from '../../../src/units/unit.ts';
import '../../../src/views/parts/number-field.ts';
import type { NumberField } from '../../../src/views/parts/number-field.ts';
import type { EntryDetail } from '../../../src/views/parts/typed-entry.ts';

function unit(text: string): Unit {
  const read = parseUnit(text);
  if (read.kind === 'fault') throw new Error(read.reason);
  return read.unit;
}

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

  it('has a label and no fault that axe can find', async () => {
    const { field } = await fieldIn('ft', '24');
    await expect(field).to.be.accessible();
  });
});
