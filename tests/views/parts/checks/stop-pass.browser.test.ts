import { expect, fixture, html } from '@open-wc/testing';
import type { ToldCheck } from '../../../../src/quote/told-checks.ts';
import type { StopPass } from '../../../../src/views/parts/checks/stop-pass.ts';
import '../../../../src/views/parts/checks/stop-pass.ts';
import { withPageInFront } from '../../../helpers/page-focus.ts';
import { withTheme } from '../../../helpers/page-theme.ts';

let leave: () => void;

beforeEach(() => {
  localStorage.removeItem('who-goes-ahead');
  leave = withPageInFront();
});

afterEach(() => leave());

const rain: ToldCheck = {
  name: 'no_rain',
  label: 'No rain',
  layer: 'system',
  severity: 'stop',
  absolute: false,
  open: false,
  verdict: 'fails',
  says: 'Rain on a wet coat stops work.',
  cell: 4,
};
const passed = { by: 'Dana R.', why: 'A tent stands over it.', at: '2026-11-25T14:05:00.000Z', said: rain.says };

async function passOf(check: ToldCheck): Promise<{ pass: StopPass; decided: unknown[] }> {
  const pass = await fixture<StopPass>(html`<stop-pass .check=${check} option="a"></stop-pass>`);
  const decided: unknown[] = [];
  pass.addEventListener('stop-decided', ({ detail }) => decided.push(detail));
  return { pass, decided };
}

function words(pass: StopPass): string {
  return pass.renderRoot.textContent?.replaceAll(/\s+/g, ' ').trim() ?? '';
}

async function press(pass: StopPass, name: string): Promise<void> {
  const button = [...pass.renderRoot.querySelectorAll('button')].find(
    ({ textContent }) => textContent?.trim() === name,
  );
  if (button === undefined) throw new Error(`There is no ${name}`);
  button.click();
  await pass.updateComplete;
  await pass.updateComplete;
}

function field(pass: StopPass, name: string): HTMLInputElement {
  const found = pass.renderRoot.querySelector<HTMLInputElement>(`[name=${name}]`);
  if (found === null) throw new Error(`There is no field ${name}`);
  return found;
}

describe('what becomes of a stop', () => {
  it('asks for a name and a reason, says which is missing, and tells both once they are there', async () => {
    const { pass, decided } = await passOf(rain);
    await press(pass, 'Go ahead anyway');
    expect(pass.shadowRoot?.activeElement).to.equal(field(pass, 'by'));
    await press(pass, 'Go ahead');
    expect(words(pass)).to.contain('Say who goes ahead.');
    field(pass, 'by').value = 'Dana R.';
    await press(pass, 'Go ahead');
    expect(words(pass)).to.contain('Say why it is right to go ahead.');
    expect(pass.shadowRoot?.activeElement).to.equal(field(pass, 'why'));
    field(pass, 'why').value = 'A tent stands over it.';
    expect(decided).to.deep.equal([]);
    await press(pass, 'Go ahead');
    expect(decided).to.deep.equal([
      { option: 'a', check: 'no_rain', given: { by: 'Dana R.', why: 'A tent stands over it.' } },
    ]);
  });

  it('knows the name again at the next stop', async () => {
    localStorage.setItem('who-goes-ahead', 'Dana R.');
    const { pass } = await passOf(rain);
    await press(pass, 'Go ahead anyway');
    expect(field(pass, 'by').value).to.equal('Dana R.');
    expect(pass.shadowRoot?.activeElement).to.equal(field(pass, 'why'));
  });

  it('is left stopped by Escape, with the focus back where it was asked', async () => {
    const { pass, decided } = await passOf(rain);
    await press(pass, 'Go ahead anyway');
    field(pass, 'by').dispatchEvent(new KeyboardEvent('keydown', { key: 'Escape', bubbles: true }));
    await pass.updateComplete;
    await pass.updateComplete;
    expect(pass.shadowRoot?.activeElement?.textContent?.trim()).to.equal('Go ahead anyway');
    expect(decided).to.deep.equal([]);
  });

  it('that was passed tells who went ahead, when and why, and stops again when it is told to', async () => {
    const { pass, decided } = await passOf({ ...rain, passed });
    expect(words(pass)).to.match(/^Dana R\. went ahead, Nov 2[56], 2026, \d+:\d5 [ap]m: A tent stands over it\./);
    await press(pass, 'Let it stop again');
    expect(decided).to.deep.equal([{ option: 'a', check: 'no_rain' }]);
  });

  it('that says something else by now tells what it said when somebody went ahead', async () => {
    const { pass } = await passOf({ ...rain, lapsed: { ...passed, said: 'Drizzle.' } });
    expect(words(pass)).to.match(/Dana R\. went ahead, .*, when it said: “Drizzle\.” Go ahead anyway$/);
  });

  it('has no button where there is no way round, or where it cannot be told whether it stops', async () => {
    const { pass: absolute } = await passOf({ ...rain, absolute: true });
    expect(words(absolute)).to.contain('no way round');
    const { pass: unknown } = await passOf({ ...rain, verdict: 'unknown' });
    for (const pass of [absolute, unknown]) expect(pass.renderRoot.querySelector('button')).to.equal(null);
  });

  for (const scheme of ['light', 'dark'] as const) {
    it(`has no fault that axe can find, asking and told: ${scheme}`, async () => {
      const undress = await withTheme(scheme);
      const { pass } = await passOf(rain);
      await expect(pass).to.be.accessible();
      await press(pass, 'Go ahead anyway');
      await press(pass, 'Go ahead');
      await expect(pass).to.be.accessible();
      undress();
    });
  }
});
