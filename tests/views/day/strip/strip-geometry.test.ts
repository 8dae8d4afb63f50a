import { describe, expect, it } from 'vitest';
import { clockHour } from '../../../../src/units/hours.ts';
import {
  drawStrip,
  laneHeight,
  type StripDay,
  type StripSpan,
} from '../../../../src/views/day/strip/strip-geometry.ts';

const span = (from: number, to: number, words: string, mark?: string): StripSpan => ({
  tone: 'work',
  from: clockHour(from),
  to: clockHour(to),
  words,
  ...(mark !== undefined && { mark }),
});

const day = (spans: readonly StripSpan[], midnight = 0): StripDay => ({
  title: 'Day 1',
  midnight: clockHour(midnight),
  lanes: [{ name: 'The crew', spans }],
});

const wide = 640;

describe('a strip of 7 am to 5 pm on 640 px', () => {
  const strip = drawStrip([day([span(7, 7.5, 'Shop'), span(8, 16.6, 'Grind', '1')])], wide);

  it('is ruled at every full hour, 7 am to 5 pm, 60 px apart', () => {
    expect(strip.ticks.map(({ x }) => x)).toEqual([20, 80, 140, 200, 260, 320, 380, 440, 500, 560, 620]);
    expect(strip.ticks.map(({ words }) => words)).toEqual([
      ...['7 am', '8 am', '9 am', '10 am', '11 am', 'noon'],
      ...['1 pm', '2 pm', '3 pm', '4 pm', '5 pm'],
    ]);
  });

  it('puts 8 am to 4:36 pm where its hours are', () => {
    const box = strip.days[0]?.lanes[0]?.boxes[1];
    expect(box).toMatchObject({ x: 80, words: '1 Grind' });
    expect(box?.width).toBeCloseTo(8.6 * 60, 9);
  });
});

it('a day that begins a billionth of an hour before 7 am is ruled from 7 am', () => {
  const strip = drawStrip([day([span(7 - 1e-9, 9 + 1e-9, '')])], wide);
  expect(strip.ticks.map(({ words }) => words)).toEqual(['7 am', '8 am', '9 am']);
});

it('a day to midnight says so only where the word has room: not at the end of the strip', () => {
  const words = (to: number): string[] => drawStrip([day([span(20, to, '')])], wide).ticks.map((tick) => tick.words);
  expect(words(24)).toEqual(['8 pm', '9 pm', '10 pm', '11 pm', '']);
  expect(words(25)).toEqual(['8 pm', '9 pm', '10 pm', '11 pm', 'midnight', '1 am']);
});

it('a second day stands on the same hours as the first', () => {
  const strip = drawStrip([day([span(8, 9, '')]), day([span(32, 33, '')], 24)], wide);
  expect(strip.days.map(({ lanes }) => lanes[0]?.boxes[0]?.x)).toEqual([20, 20]);
});

describe.each([320, 640, 1400])('on %i px', (width) => {
  const spans = Array.from({ length: 12 }, (_, at) => span(8 + at * 0.2, 8.2 + at * 0.2, 'A long task', `${at + 1}`));
  const strip = drawStrip([day([...spans, span(12, 19, 'Cure')])], width);
  const lane = strip.days[0]?.lanes[0];

  it('no span leaves the picture', () => {
    for (const { x, width: own } of lane?.boxes ?? []) {
      expect(x).toBeGreaterThanOrEqual(0);
      expect(x + own).toBeLessThanOrEqual(width);
    }
    expect(lane?.boxes).toHaveLength(13);
  });

  it('every task has its words or its number, inside it or below', () => {
    const told = [...(lane?.boxes ?? []).slice(0, 12), ...(lane?.marks ?? [])].map(({ words }) => words.split(' ')[0]);
    for (let number = 1; number <= 12; number += 1) expect(told).toContain(`${number}`);
  });

  it('the picture is high enough for every text below a lane', () => {
    const deepest = Math.max(...(lane?.marks ?? []).map(({ drop }) => drop));
    expect(strip.days[0]?.height).toBeGreaterThanOrEqual((lane?.top ?? 0) + laneHeight + deepest + 7);
  });

  it('hours that are written stand at least 42 px apart', () => {
    const written = strip.ticks.filter(({ words }) => words !== '');
    expect(written.length).toBeGreaterThan(1);
    for (const [at, { x }] of written.entries())
      expect((written[at + 1]?.x ?? Number.POSITIVE_INFINITY) - x).toBeGreaterThanOrEqual(42);
  });
});
