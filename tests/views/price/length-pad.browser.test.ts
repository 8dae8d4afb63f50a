import { expect, fixture, html } from '@open-wc/testing';
import '../../../src/views/price/length-pad.ts';
import type { Measures } from '../../../src/units/measures.ts';
import type { LengthPad, MeasuredSides } from '../../../src/views/price/length-pad.ts';

async function openPad(measures: Measures = 'us') {
  const measured: MeasuredSides[] = [];
  const pad = await fixture<LengthPad>(html`<length-pad
    measures=${measures}
    @measured=${(event: CustomEvent<MeasuredSides>) => measured.push(event.detail)}
  ></length-pad>`);
  pad.open();
  await pad.updateComplete;
  const touch = async (...keys: readonly string[]) => {
    for (const key of keys) {
      const found = [...pad.renderRoot.querySelectorAll('button')].find(
        (button) => button.textContent.trim() === key || button.getAttribute('aria-label') === key,
      );
      if (found === undefined) throw new Error(`There is no key ${key}`);
      found.click();
      await pad.updateComplete;
    }
  };
  const told = () => pad.renderRoot.querySelector('[role=status]')?.textContent?.replaceAll(/\s+/g, ' ').trim() ?? '';
  return { touch, told, measured };
}

describe('the length pad', () => {
  it('says how it reads 22 ft 7 in while it is typed', async () => {
    const { touch, told } = await openPad();
    await touch('2', '2');
    expect(told()).to.equal('');
    await touch('ft', '7');
    expect(told()).to.equal('Length: 22 ft 7 in = 22.5833 ft');
  });

  it('says at once that marks without a number cannot be read, until they are rubbed out', async () => {
    const { touch, told } = await openPad();
    await touch('in', 'ft', 'ft', '6', '½', '½');
    expect(told()).to.match(/^Length cannot be read: ./);
    await touch(...Array.from({ length: 12 }, () => 'Rub out'));
    expect(told()).to.equal('');
  });

  it('asks whether 227 is 22 ft 7 in, and takes it all the same', async () => {
    const { touch, told, measured } = await openPad();
    await touch('2', '2', '7');
    expect(told()).to.equal(`Length: 227 ft, as long as that? For 22' 7" press ft after 22.`);
    await touch('Width next', '2', '0');
    expect(told()).to.contain('227 ft');
    await touch('Done');
    expect(measured.map(({ length, width }) => [length.value, width.value])).to.deep.equal([[227, 20]]);
  });

  it('does not ask about 100 ft', async () => {
    const { touch, told } = await openPad();
    await touch('1', '0', '0');
    expect(told()).to.equal('');
  });

  it('asks in metres where it is typed in metres: 690 may be 6.90', async () => {
    const { touch, told } = await openPad('metric');
    await touch('6', '9', '0');
    expect(told()).to.equal('Length: 690 m, as long as that? For 6.90 m press the point after 6.');
  });
});
