import { expect, fixture, html } from '@open-wc/testing';
import '../../../../src/views/costing/sheet/sheet-section.ts';
import type { SheetSection } from '../../../../src/views/costing/sheet/sheet-section.ts';
import type { ShownSection } from '../../../../src/views/costing/sheet/shown-sheet.ts';
import { numberView } from '../../../helpers/shown-fields.ts';

const rate = (name: string) => numberView({ name, label: name, standing: 'unchecked' });

function section(unchecked: readonly string[]): ShownSection {
  return { id: 'rates', title: 'Rates', note: '', lines: ['wage', 'waste'].map(rate), tables: [], unchecked };
}

async function shown(unchecked: readonly string[]): Promise<SheetSection> {
  return await fixture<SheetSection>(html`<sheet-section .made=${() => section(unchecked)}></sheet-section>`);
}

describe('a section with lines that nobody has looked at', () => {
  it('says how many, once, and has them checked in one touch', async () => {
    const element = await shown(['wage', 'waste']);
    const told: unknown[] = [];
    element.addEventListener('lines-checked', ({ detail }) => told.push(detail));
    const mark = element.renderRoot.querySelector('.unchecked');
    expect(mark?.textContent).to.contain('2 lines not checked yet');
    element.renderRoot.querySelector<HTMLElement>('.unchecked button')?.click();
    expect(told).to.deep.equal([{ checked: ['wage', 'waste'] }]);
  });

  it('tells those who listen at each line, and shows no words there', async () => {
    const element = await shown(['wage', 'waste']);
    const lines = [...element.renderRoot.querySelectorAll('value-line')];
    await Promise.all(lines.map((line) => line.updateComplete));
    const words = lines.map((line) =>
      [...line.renderRoot.querySelectorAll('.from *')].filter(({ textContent }) => textContent === 'not checked yet'),
    );
    expect(words.map((own) => own.map(({ className }) => className))).to.deep.equal([['hidden'], ['hidden']]);
  });

  it('says nothing once all are checked', async () => {
    const element = await shown([]);
    expect(element.renderRoot.querySelector('.unchecked')).to.equal(null);
  });
});
