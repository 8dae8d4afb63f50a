import { expect, fixture, html } from '@open-wc/testing';
import type { ToldCheck } from '../../../../src/quote/told-checks.ts';
import type { CheckList } from '../../../../src/views/parts/checks/check-list.ts';
import '../../../../src/views/parts/checks/check-list.ts';
import { withPageInFront } from '../../../helpers/page-focus.ts';
import { withTheme } from '../../../helpers/page-theme.ts';

let leave: () => void;

beforeEach(() => {
  leave = withPageInFront();
});

afterEach(() => leave());

function told(severity: ToldCheck['severity'], says: string, cell: number): ToldCheck {
  const name = `check_${cell}`;
  return { name, label: says, layer: 'system', severity, absolute: false, open: false, verdict: 'fails', says, cell };
}

const epoxy = told('note', 'Epoxies sensitise the skin.', 1);
const hours = told('caution', 'Hand grinding comes to 5 h.', 2);
const grip = told('note', 'Ask the maker for the grip.', 3);
const rain = told('stop', 'Rain on a wet coat stops work.', 4);
const all = [epoxy, hours, grip, rain];

async function listOf(checks: readonly ToldCheck[]): Promise<CheckList> {
  return await fixture<CheckList>(html`<check-list .checks=${checks} option="a"></check-list>`);
}

function part<T extends Element>(list: CheckList, selector: string): T {
  const found = list.renderRoot.querySelector<T>(selector);
  if (!found) throw new Error(`There is no ${selector}`);
  return found;
}

/** The words of the items that are on the page and not folded away. */
function inTheOpen(list: CheckList): string[] {
  return [...list.renderRoot.querySelectorAll('li')]
    .filter((item) => item.checkVisibility())
    .map((item) => item.textContent.replaceAll(/\s+/g, ' ').trim());
}

describe('the list of checks', () => {
  it('keeps a stop and a caution in the open and folds two notes under “Notes (2)”', async () => {
    const list = await listOf(all);
    expect(inTheOpen(list)).to.deep.equal([`■ Stop ${rain.says}`, `▲ Caution ${hours.says}`]);
    expect(part(list, 'summary').textContent).to.equal('Notes (2)');
    part<HTMLElement>(list, 'summary').click();
    expect(inTheOpen(list)).to.have.length(4);
    expect(inTheOpen(list).slice(2)).to.deep.equal([`● Note ${epoxy.says}`, `● Note ${grip.says}`]);
  });

  it('puts stops above cautions, each in the order of the sheet, also where a caution comes first there', async () => {
    const damp = told('caution', 'Nobody has tested for damp.', 5);
    const cold = told('stop', 'The slab is too cold.', 6);
    const list = await listOf([hours, rain, damp, cold]);
    expect(inTheOpen(list).map((item) => item.slice(2))).to.deep.equal([
      `Stop ${rain.says}`,
      `Stop ${cold.says}`,
      `Caution ${hours.says}`,
      `Caution ${damp.says}`,
    ]);
  });

  it('says that no stop and no caution is open where there are notes only, and that none is where there are none', async () => {
    const notes = await listOf([epoxy]);
    expect(part(notes, 'p').textContent).to.equal('No stop and no caution is open.');
    expect(part(notes, 'summary').textContent).to.equal('Notes (1)');
    const none = await listOf([]);
    expect(part(none, 'p').textContent).to.equal('No check is open.');
    expect(none.renderRoot.querySelector('details')).to.equal(null);
  });

  it('keeps the notes unfolded while numbers change', async () => {
    const list = await listOf(all);
    part<HTMLDetailsElement>(list, 'details').open = true;
    list.checks = [epoxy, grip];
    await list.updateComplete;
    expect(inTheOpen(list)).to.have.length(2);
  });

  it('is walked by keyboard: stop, caution, the fold, and the notes only once it is open', async () => {
    const list = await listOf(all);
    const reached = [...list.renderRoot.querySelectorAll<HTMLElement>('button, summary')].filter((each) => {
      each.focus();
      return list.shadowRoot?.activeElement === each;
    });
    expect(reached.map(({ localName }) => localName)).to.deep.equal(['button', 'button', 'summary']);
  });

  it('asks why of a note as of a stop', async () => {
    const list = await listOf(all);
    const asked: unknown[] = [];
    list.addEventListener('why-asked', (event) => asked.push(event.detail));
    part<HTMLDetailsElement>(list, 'details').open = true;
    for (const button of list.renderRoot.querySelectorAll('button')) button.click();
    expect(asked).to.deep.equal([rain, hours, epoxy, grip].map(({ cell }) => ({ cell, option: 'a' })));
  });

  for (const scheme of ['light', 'dark'] as const) {
    it(`has no fault that axe can find, folded and unfolded: ${scheme}`, async () => {
      const undress = await withTheme(scheme);
      const list = await listOf(all);
      await expect(list).to.be.accessible();
      part<HTMLDetailsElement>(list, 'details').open = true;
      await expect(list).to.be.accessible();
      undress();
    });
  }
});
