import { expect, fixture, html, nextFrame } from '@open-wc/testing';
import { clockHour } from '../../../src/units/hours.ts';
import type { DayRow, DayView } from '../../../src/views/day/day-view.ts';
import type { OptionDay } from '../../../src/views/day/option-day.ts';
import '../../../src/views/day/option-day.ts';
import { withPageInFront } from '../../helpers/page-focus.ts';
import { withTheme } from '../../helpers/page-theme.ts';

let leave: () => void;

beforeEach(() => {
  leave = withPageInFront();
});

afterEach(() => leave());

const row = (key: string, mark: string, words: string): DayRow => ({
  key,
  mark,
  words,
  why: '',
  start: '8 am',
  finish: '9 am',
  people: mark === '' ? '' : '2',
  hours: '1 h',
  quiet: mark === '',
});

const view: Extract<DayView, { kind: 'days' }> = {
  kind: 'days',
  strip: [
    {
      title: 'Day 1 · visit 1',
      midnight: clockHour(0),
      lanes: [
        {
          name: 'The crew, one thing after the other',
          spans: [
            {
              tone: 'light',
              from: clockHour(7),
              to: clockHour(8),
              words: 'Drive',
              key: 'drive',
              said: 'Drive, 7 am to 8 am',
            },
            {
              tone: 'work',
              from: clockHour(8),
              to: clockHour(12),
              words: 'Grind',
              mark: '1',
              key: 'grind',
              said: '1 Grind, 8 am to noon',
            },
            {
              tone: 'coat',
              from: clockHour(12),
              to: clockHour(12.2),
              words: 'Base',
              mark: '2',
              key: 'base',
              said: '2 Base, noon to 12:12 pm',
            },
            {
              tone: 'work',
              from: clockHour(12.2),
              to: clockHour(15),
              words: 'Wash',
              mark: '3',
              key: 'wash',
              said: '3 Wash, 12:12 pm to 3 pm',
            },
          ],
        },
      ],
    },
  ],
  days: [
    {
      title: 'Day 1 · visit 1',
      rows: [row('drive', '', 'Drive'), row('grind', '1', 'Grind'), row('base', '2', 'Base'), row('wash', '3', 'Wash')],
    },
  ],
  visits: [],
  totals: [],
};

async function dayOf(width = 1400): Promise<OptionDay> {
  const frame = await fixture<HTMLElement>(
    html`<div style="width: ${width}px"><option-day heading="Flake" .view=${view}></option-day></div>`,
  );
  const day = frame.querySelector('option-day');
  if (day === null) throw new Error('There is no day');
  // The picture's own width is known after the first paint.
  for (let frames = 0; frames < 6; frames += 1) await nextFrame();
  return day;
}

function strip(day: OptionDay): ShadowRoot {
  const root = day.renderRoot.querySelector('strip-chart')?.shadowRoot;
  if (!root) throw new Error('There is no picture');
  return root;
}

/** The keys of rows and pieces that stand out. */
async function marked(day: OptionDay): Promise<string> {
  await day.updateComplete;
  await day.renderRoot.querySelector('strip-chart')?.updateComplete;
  const rows = [...day.renderRoot.querySelectorAll('tr.marked button')].map(
    (each) => `row ${each.getAttribute('data-key')}`,
  );
  const pieces = [...strip(day).querySelectorAll('rect.marked')].map(
    (each) => `piece ${each.closest('[data-key]')?.getAttribute('data-key')}`,
  );
  return [...rows, ...pieces].join(', ');
}

function rowButton(day: OptionDay, key: string): HTMLElement {
  const found = day.renderRoot.querySelector<HTMLElement>(`button[data-key='${key}']`);
  if (found === null) throw new Error(`There is no row ${key}`);
  return found;
}

function piece(day: OptionDay, key: string): SVGElement {
  const found = strip(day).querySelector<SVGElement>(`g[data-key='${key}']`);
  if (found === null) throw new Error(`There is no piece ${key}`);
  return found;
}

function press(on: Element, key: string): void {
  on.dispatchEvent(new KeyboardEvent('keydown', { key, bubbles: true, cancelable: true, composed: true }));
}

describe('a day in picture and table', () => {
  it('marks the piece while the mouse is over its row, and the row while it is over the piece', async () => {
    const day = await dayOf();
    rowButton(day, 'base').closest('tr')?.dispatchEvent(new PointerEvent('pointerenter'));
    expect(await marked(day)).to.equal('row base, piece base');
    rowButton(day, 'base').closest('tr')?.dispatchEvent(new PointerEvent('pointerleave'));
    expect(await marked(day)).to.equal('');
    piece(day, 'grind').dispatchEvent(new PointerEvent('pointerenter'));
    expect(await marked(day)).to.equal('row grind, piece grind');
  });

  it('goes from row to row with the arrows, as one stop of Tab, and marks each piece', async () => {
    const day = await dayOf();
    rowButton(day, 'drive').focus();
    for (const wanted of ['grind', 'base']) {
      press(day.shadowRoot?.activeElement ?? day, 'ArrowDown');
      expect(await marked(day)).to.equal(`row ${wanted}, piece ${wanted}`);
    }
    press(day.shadowRoot?.activeElement ?? day, 'End');
    expect(await marked(day)).to.equal('row wash, piece wash');
    expect(day.renderRoot.querySelectorAll('button[tabindex="0"]').length).to.equal(1);
  });

  it('goes from piece to piece with the arrows and marks each row', async () => {
    const day = await dayOf();
    piece(day, 'drive').focus();
    press(piece(day, 'drive'), 'ArrowRight');
    expect(strip(day).activeElement?.getAttribute('data-key')).to.equal('grind');
    expect(await marked(day)).to.equal('row grind, piece grind');
    expect(strip(day).querySelectorAll('g[tabindex="0"]').length).to.equal(1);
  });

  it('keeps what was pressed marked, and lets it go when it is pressed again', async () => {
    const day = await dayOf();
    rowButton(day, 'wash').click();
    expect(await marked(day)).to.equal('row wash, piece wash');
    expect(piece(day, 'wash').getAttribute('aria-pressed')).to.equal('true');
    press(piece(day, 'wash'), 'Enter');
    expect(await marked(day)).to.equal('');
  });

  it('names a short piece beside its line on a wide strip', async () => {
    const day = await dayOf();
    expect([...strip(day).querySelectorAll('text.start')].map(({ textContent }) => textContent)).to.include('2 Base');
  });

  it('is a picture of which nothing takes focus on 360 px; its rows are marked all the same', async () => {
    const day = await dayOf(360);
    expect(strip(day).querySelector('[role="img"]')).to.not.equal(null);
    expect(strip(day).querySelectorAll('[tabindex]').length).to.equal(0);
    rowButton(day, 'base').click();
    expect(await marked(day)).to.contain('row base, piece');
  });

  for (const scheme of ['light', 'dark'] as const)
    it(`has no fault that axe can find, with a piece marked: ${scheme}`, async () => {
      const undress = await withTheme(scheme);
      const day = await dayOf();
      rowButton(day, 'base').click();
      await marked(day);
      await expect(day).to.be.accessible();
      undress();
    });
});
