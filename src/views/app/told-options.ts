import type { Measures } from '../../units/measures.ts';
import { heldBack } from '../parts/checks/held-price.ts';
import { promiseWords } from '../parts/day-promise.ts';
import { namedResults, type WorkedOut } from '../parts/named-results.ts';
import { toldPrice } from './thumb-bar.ts';

/** What those who listen are told of a quote’s options; nothing a customer may not hear. */
export interface ToldOptions {
  readonly measures: Measures;
  readonly options: readonly ToldOption[];
}

export interface ToldOption {
  readonly id: string;
  readonly title: string;
  /** `$4,185`; `$4,185, not yet` while it may not be given. */
  readonly price: string;
  readonly days: string;
  /** Why the price may not be given; empty when it may. */
  readonly held: string;
}

export function toldOptions(of: WorkedOut, measures: Measures): ToldOptions {
  const options = namedResults(of).map(({ id, title, results }): ToldOption => {
    const days = promiseWords(results).replaceAll(' · ', ', ');
    return { id, title, price: toldPrice(results), days, held: heldBack(results, measures).join(' ') };
  });
  return { measures, options };
}

/**
 * What moved of each option since `before`; every price where other options stand beside each other now.
 * Example: 'Full flake: $4,312, 2 days on site, walk on it no sooner than 6 hours after the last coat.'
 */
export function movedWords(before: ToldOptions | undefined, now: ToldOptions): string {
  const ids = ({ options }: ToldOptions): string => options.map(({ id }) => id).join(' ');
  if (before === undefined || ids(before) !== ids(now))
    return now.options.map(({ title, price }) => `${title}: ${price}.`).join(' ');
  // The same reason in other measures is no news.
  const isComparable = before.measures === now.measures;
  return now.options
    .flatMap((option, at) => {
      const was = before.options[at];
      const figures = [option.price === was?.price ? '' : option.price, option.days === was?.days ? '' : option.days];
      const told = figures.filter((words) => words !== '').join(', ');
      const held = isComparable && option.held !== was?.held ? option.held : '';
      const sentences = [told === '' ? '' : `${told}.`, held].filter((words) => words !== '');
      return sentences.length === 0 ? [] : [`${option.title}: ${sentences.join(' ')}`];
    })
    .join(' ');
}
