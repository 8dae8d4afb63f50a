import { expect, fixture, html } from '@open-wc/testing';
import type { StatusRegion } from '../../../src/views/app/status-region.ts';
import '../../../src/views/app/status-region.ts';
import type { ToldOptions } from '../../../src/views/app/told-options.ts';
import { until } from '../../helpers/until.ts';

interface Said {
  readonly words: string;
  /** Milliseconds on the page’s clock. */
  readonly at: number;
}

async function listened(): Promise<{ region: StatusRegion; said: Said[] }> {
  const region = await fixture<StatusRegion>(html`<status-region></status-region>`);
  const said: Said[] = [];
  const status = region.renderRoot.querySelector('[role=status]');
  if (status === null) throw new Error('There is no status');
  const note = (): void => {
    said.push({ words: status.textContent.trim(), at: performance.now() });
  };
  new MutationObserver(note).observe(status, { childList: true, characterData: true, subtree: true });
  return { region, said };
}

function words(said: readonly Said[]): string[] {
  return said.map((each) => each.words).filter((each) => each !== '');
}

function priced(price: string): ToldOptions {
  return { measures: 'us', options: [{ id: 'a', title: 'Full flake', price, days: 'one day on site', held: '' }] };
}

/** Long enough for anything that is still to be said. */
async function rested(): Promise<void> {
  await new Promise((resolve) => setTimeout(resolve, 900));
}

describe('the status region', () => {
  it('says the last of several words, once, at least 400 ms after them', async () => {
    const { region, said } = await listened();
    region.tell('Corner 3: across 23 ft.');
    await new Promise((resolve) => setTimeout(resolve, 100));
    region.tell('Corner 3: across 24 ft.');
    const told = performance.now();
    await until(() => said.length > 0);
    await rested();
    expect(words(said)).to.deep.equal(['Corner 3: across 24 ft.']);
    expect((said[0]?.at ?? 0) - told).to.be.at.least(400);
  });

  it('says what was done and what it moved in one', async () => {
    const { region, said } = await listened();
    let price = '$4,185';
    region.follow(() => priced(price));
    await rested();
    expect(words(said)).to.deep.equal([]);
    price = '$4,312';
    region.optionsMoved();
    region.tell('Taken out: door openings.');
    await until(() => said.length > 0);
    await rested();
    expect(words(said)).to.deep.equal(['Taken out: door openings. Full flake: $4,312.']);
  });

  it('drops words of a change that another came after, and a price that is as it was', async () => {
    const { region, said } = await listened();
    region.follow(() => priced('$4,185'));
    await rested();
    region.optionsMoved();
    region.tell('Taken out: door openings.');
    region.optionsMoved();
    await rested();
    expect(words(said)).to.deep.equal([]);
  });

  it('says the same words again when they are told again', async () => {
    const { region, said } = await listened();
    region.tell('An area keeps at least three corners.');
    await until(() => words(said).length === 1);
    region.tell('An area keeps at least three corners.');
    await until(() => words(said).length === 2);
    expect(said.map((each) => each.words)).to.deep.equal([
      'An area keeps at least three corners.',
      '',
      'An area keeps at least three corners.',
    ]);
  });

  it('says nothing any more of a quote that was left', async () => {
    const { region, said } = await listened();
    region.follow(() => priced('$4,185'));
    region.optionsMoved();
    region.forget();
    await rested();
    expect(words(said)).to.deep.equal([]);
  });
});
