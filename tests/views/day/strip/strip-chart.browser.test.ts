import { expect, fixture, html } from '@open-wc/testing';
import { clockHour } from '../../../../src/units/hours.ts';
import type { StripChart } from '../../../../src/views/day/strip/strip-chart.ts';
import '../../../../src/views/day/strip/strip-chart.ts';
import type { StripDay, StripSpan, StripTone } from '../../../../src/views/day/strip/strip-geometry.ts';
import { withTheme } from '../../../helpers/page-theme.ts';
import { drawnToWidth } from '../../../helpers/until.ts';

const span = (tone: StripTone, from: number, to: number, words: string, mark?: string): StripSpan => ({
  tone,
  from: clockHour(from),
  to: clockHour(to),
  words,
  ...(mark !== undefined && { mark }),
});

const day: StripDay = {
  title: 'Day 1 · visit 1',
  midnight: clockHour(0),
  lanes: [
    {
      name: 'The crew, one thing after the other',
      spans: [
        span('light', 7, 7.75, 'Shop'),
        span('light', 7.75, 8.25, 'Drive'),
        span('work', 8.25, 11, 'Grind', '1'),
        span('work', 11, 11.2, 'Vacuum', '3'),
        span('coat', 11.2, 11.6, 'Fast base', '4'),
        span('work', 11.6, 11.8, 'Broadcast', '5'),
        span('wait', 11.8, 15.6, 'Cure'),
        span('coat', 15.6, 16.1, 'Clear', '6'),
      ],
    },
    { name: 'Beside it', spans: [span('work', 8.25, 10, 'Grind edges', '2')] },
  ],
};

async function chartOf(width: number): Promise<StripChart> {
  const frame = await fixture<HTMLElement>(
    html`<div style="width: ${width}px"><strip-chart .days=${[day]} words="a test"></strip-chart></div>`,
  );
  const chart = frame.querySelector('strip-chart');
  if (chart === null) throw new Error('There is no chart');
  await drawnToWidth(chart, 'svg[viewBox]');
  return chart;
}

function textsOf(chart: StripChart): SVGTextElement[] {
  return [...(chart.shadowRoot?.querySelectorAll('text') ?? [])];
}

describe('the strip of a day', () => {
  for (const width of [320, 780, 1360]) {
    it(`has only labels of 12 px and more, all of them within ${width} px`, async () => {
      const chart = await chartOf(width);
      const texts = textsOf(chart);
      expect(texts.length).to.be.greaterThan(8);
      const frame = chart.getBoundingClientRect();
      expect(frame.width).to.equal(width);
      for (const text of texts) {
        expect(Number.parseFloat(getComputedStyle(text).fontSize)).to.be.at.least(12);
        const { left, right } = text.getBoundingClientRect();
        expect(left, text.textContent ?? '').to.be.at.least(frame.left - 0.5);
        expect(right, text.textContent ?? '').to.be.at.most(frame.right + 0.5);
      }
    });

    it(`writes no label over another of its lane on ${width} px`, async () => {
      const texts = textsOf(await chartOf(width)).map((text) => text.getBoundingClientRect());
      let compared = 0;
      for (const [at, one] of texts.entries())
        for (const other of texts.slice(at + 1)) {
          compared += 1;
          const apart = one.right <= other.left + 1 || other.right <= one.left + 1;
          const above = one.bottom <= other.top + 4 || other.bottom <= one.top + 4;
          expect(apart || above).to.equal(true);
        }
      expect(compared).to.be.greaterThan(28);
    });
  }

  it('keeps every label of a span within it on 780 px', async () => {
    const chart = await chartOf(780);
    const inside = [...(chart.shadowRoot?.querySelectorAll('text.in') ?? [])];
    expect(inside.map((text) => text.textContent)).to.include.members(['1 Grind', '2 Grind edges', 'Cure']);
    for (const text of inside) {
      const box = text.previousElementSibling?.getBoundingClientRect();
      const { left, right } = text.getBoundingClientRect();
      expect(left).to.be.at.least(box?.left ?? Number.NaN);
      expect(right).to.be.at.most(box?.right ?? Number.NaN);
    }
  });

  it('puts paper behind words that hours are ruled through', async () => {
    const undress = await withTheme('light');
    const chart = await chartOf(780);
    const words = textsOf(chart).filter((text) => text.matches('.name, .mark, .light'));
    expect(words.length).to.be.greaterThan(3);
    for (const text of words) {
      const { paintOrder, stroke, strokeWidth } = getComputedStyle(text);
      expect(paintOrder).to.match(/^stroke/);
      expect(stroke).to.not.equal('none');
      expect(Number.parseFloat(strokeWidth)).to.be.at.least(4);
    }
    undress();
  });

  it('says what it shows to those who do not see it', async () => {
    const picture = (await chartOf(780)).shadowRoot?.querySelector('[role="img"]');
    expect(picture?.getAttribute('aria-label')).to.equal('Day 1 · visit 1: a test');
  });

  for (const scheme of ['light', 'dark'] as const)
    it(`has no fault that axe can find: ${scheme}`, async () => {
      const undress = await withTheme(scheme);
      await expect(await chartOf(780)).to.be.accessible();
      undress();
    });
});
