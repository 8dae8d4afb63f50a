import { expect, fixture, html } from '@open-wc/testing';
import type { WhyPanel } from '../../../../src/views/costing/explanation/why-panel.ts';
import '../../../../src/views/costing/explanation/why-panel.ts';
import type { WhyView } from '../../../../src/views/costing/explanation/why-view.ts';
import { withPageInFront } from '../../../helpers/page-focus.ts';
import { withTheme } from '../../../helpers/page-theme.ts';

let leave: () => void;

beforeEach(() => {
  leave = withPageInFront();
});

afterEach(() => leave());

function whyOf(title: string): WhyView {
  return {
    title,
    value: '$4,250.00',
    trouble: '',
    names: 'ROUNDUP(list_price, price_step)',
    numbers: 'ROUNDUP($4,249.94, $25.00)',
    steps: [],
    readsFrom: [{ cell: 7, name: 'List price', value: '$4,249.94' }],
    feeds: [],
    note: '',
    source: '',
  };
}

async function panelOf(cameFrom = ''): Promise<WhyPanel> {
  return await fixture<WhyPanel>(
    html`<why-panel .why=${whyOf('Price')} option="a" optionTitle="Full flake" cameFrom=${cameFrom}></why-panel>`,
  );
}

function button(panel: WhyPanel, words: RegExp): HTMLButtonElement | undefined {
  return [...panel.renderRoot.querySelectorAll('button')].find(({ textContent }) => words.test(textContent));
}

describe('the answer to why', () => {
  it('takes focus to its heading once the next answer is drawn', async () => {
    const panel = await panelOf();
    button(panel, /List price/)?.focus();
    panel.why = whyOf('List price');
    await panel.come();
    const active = panel.shadowRoot?.activeElement;
    expect(active?.localName).to.equal('h3');
    expect(active?.textContent).to.equal('List price');
    expect(active?.getAttribute('tabindex')).to.equal('-1');
  });

  it('names what was asked before, and leads back there', async () => {
    const panel = await panelOf('Gross profit');
    let walked = 0;
    panel.addEventListener('walked-back', () => {
      walked += 1;
    });
    button(panel, /^Back to Gross profit$/)?.click();
    expect(walked).to.equal(1);
  });

  it('has no way back at the first question', async () => {
    expect(button(await panelOf(), /Back/)).to.equal(undefined);
  });

  for (const scheme of ['light', 'dark'] as const)
    it(`has no fault that axe can find: ${scheme}`, async () => {
      const undress = await withTheme(scheme);
      await expect(await panelOf('Gross profit')).to.be.accessible();
      undress();
    });
});
