import { describe, expect, it } from 'vitest';
import type { Given } from '../helpers/given-floor.ts';
import { priced } from '../helpers/priced-floor.ts';

// `priced` works a floor out by both evaluators and throws where a cell differs, failures by kind and origin.
const failing: readonly (readonly [string, Given, string, string])[] = [
  ['a rate of 0', { set: { 'tasks.edge_grind.rate': 0 } }, 'tasks.lay_base.start', 'tasks.edge_grind.by_rate'],
  ['no day on site', { instead: { on_site_day: 0 } }, 'tasks.lay_base.start', 'tasks.move_furniture.finish'],
  ['nobody at a task', { instead: { crew: 0 } }, 'tasks.lay_clear.finish', 'tasks.move_furniture.elapsed'],
  ['a day of no hours', { instead: { clock_day: 0 } }, 'tasks.scrape.start', 'tasks.move_furniture.finish'],
];

describe('the crew’s day where something fails', () => {
  it.each(failing)('%s is told where it began, alike in both evaluators', (_, given, read, origin) => {
    const floor = priced('flake-full-broadcast', given);
    const value = floor.value(read);
    const { plan, rows } = floor.option;
    const place = typeof value === 'object' ? plan.cells[value.origin]?.place : undefined;
    expect(place?.kind === 'cell' && `${place.table}.${rows.get(place.table)?.[place.row]?.id}.${place.column}`).toBe(
      origin,
    );
  });

  it('a failed task leaves what stands above it as it was', () => {
    const whole = priced('flake-full-broadcast');
    const failed = priced('flake-full-broadcast', { set: { 'tasks.scrape.rate': 0 } });
    expect(failed.number('tasks.lay_base.finish')).toBe(whole.number('tasks.lay_base.finish'));
    expect(typeof failed.value('price')).toBe('object');
  });
});
