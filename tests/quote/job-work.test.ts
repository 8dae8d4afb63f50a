import { describe, expect, it } from 'vitest';
import { jobWork } from '../../src/quote/job-work.ts';
import { clockOf } from '../helpers/clock-of-tasks.ts';

describe('a floor done in a day, its base cured after 4 h', () => {
  const { blocks } = jobWork(
    clockOf([
      { row: 'grind', from: 8.5, to: 10.5, grinds: true },
      { row: 'edges', from: 8.5, to: 10, beside: true },
      { row: 'lay base', from: 10.5, to: 11, lays: 'Base' },
      { row: 'wash', from: 11, to: 11.25 },
      { row: 'scrape', from: 15, to: 15.5, over: 'Base', after: 4 },
      { row: 'lay clear', from: 15.5, to: 16, lays: 'Clear' },
    ]),
  );

  it('is two blocks of 3.25 h with the setting up and 1.5 h with the loading out', () => {
    expect(blocks.map(({ name, length }) => [name, length])).toEqual([
      ['base', 3.25],
      ['clear', 1.5],
    ]);
  });

  it('lets the crew go for the 3.75 h that are left of the cure when the tools are washed', () => {
    expect(blocks[0]?.cure).toEqual({ least: 3.75 });
  });

  it('needs the grinder for the first block only', () => {
    expect(blocks.map(({ grinder }) => grinder)).toEqual([true, false]);
  });

  it('starts its last coat half an hour into the second block', () => {
    expect(blocks.map(({ lastCoatAfter }) => lastCoatAfter)).toEqual([2.5, 0.5]);
  });
});

it('a coat that must be gone over within 10 h lets the crew go for at most 9 h, less half an hour of scraping', () => {
  const { blocks } = jobWork(
    clockOf([
      { row: 'lay first', from: 8.5, to: 9.5, lays: 'First' },
      { row: 'wash', from: 9.5, to: 10.5 },
      { row: 'scrape', from: 13.5, to: 14, over: 'First', after: 4 },
      { row: 'lay second', from: 14, to: 15, over: 'First', after: 4, until: 10, lays: 'Second' },
    ]),
  );
  expect(blocks[0]?.cure).toEqual({ least: 3, most: 8.5 });
});

it('a wait over the night counts from the loading out to the setting up of the next visit', () => {
  const { blocks } = jobWork(
    clockOf([
      { row: 'lay base', from: 8.5, to: 9.5, lays: 'Base' },
      { row: 'scrape', from: 32.5, to: 34, day: 2, visit: 2, over: 'Base', after: 15 },
    ]),
  );
  // From 10:00, loaded out, to 24:00, half an hour before the base is ready.
  expect(blocks.map(({ length, cure }) => [length, cure.least])).toEqual([
    [2, 14],
    [2.5, 0],
  ]);
});

it('a cure that is over while the crew still works divides nothing', () => {
  const { blocks } = jobWork(
    clockOf([
      { row: 'lay primer', from: 8.5, to: 9, lays: 'Primer' },
      { row: 'fill', from: 9, to: 13 },
      { row: 'lay base', from: 13, to: 14, lays: 'Base', over: 'Primer', after: 3 },
    ]),
  );
  expect(blocks.map(({ name }) => name)).toEqual(['primer and base']);
});

it('a coat cures on while the next visit begins with something else: nobody goes over it before its 15 h', () => {
  const { blocks } = jobWork(
    clockOf([
      { row: 'lay base', from: 8.5, to: 9.5, lays: 'Base' },
      { row: 'fill joints', from: 32.5, to: 33.5, day: 2, visit: 2 },
      { row: 'scrape', from: 33.5, to: 34, day: 2, visit: 2, over: 'Base', after: 15 },
    ]),
  );
  // Half an hour each of loading out and setting up and an hour of joints are part of the 15 h.
  expect(blocks[0]?.cure.least).toBe(13);
});

it('a wait typed for filler divides the work too, 1.5 h from its finish', () => {
  const { blocks } = jobWork(
    clockOf([
      { row: 'fill', from: 8.5, to: 9.5, wait: 1.5 },
      { row: 'vacuum', from: 11, to: 12 },
    ]),
  );
  expect(blocks.map(({ name, cure }) => [name, cure.least])).toEqual([
    ['fill', 1.5],
    ['vacuum', 0],
  ]);
});
