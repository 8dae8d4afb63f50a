import { clockText, type Hours, hoursText } from '../units/hours.ts';
import type { CrewDay, Job } from './crew-day.ts';
import { mostJobs, mostOrders, type Reason, type Refusal, type StackResult } from './stack-jobs.ts';

type NoStack = Exclude<StackResult, { kind: 'stacked' }>;

/** Why jobs do not go on one day, a sentence each; the reason of the most orders first. */
export function whyNotStacked(result: NoStack, jobs: readonly Job[], day: CrewDay, slack: Hours): string[] {
  switch (result.kind) {
    case 'refused':
      return [refusalText(result.refusal)];
    case 'none':
      return result.reasons.map((reason) => reasonText(reason, result.orders, { jobs, day, slack }));
    default:
      return result satisfies never;
  }
}

/** The blocks in their order: 'A: grind, B: grind, A: clear, B: clear'. */
function orderText(order: readonly number[], jobs: readonly Job[]): string {
  const done = jobs.map(() => 0);
  const words = order.map((at) => {
    const place = done[at] ?? 0;
    done[at] = place + 1;
    return `${jobs[at]?.name}: ${jobs[at]?.blocks[place]?.name}`;
  });
  return words.join(', ');
}

interface Asked {
  readonly jobs: readonly Job[];
  readonly day: CrewDay;
  readonly slack: Hours;
}

function reasonText({ rule, nearest, orders }: Reason, of: number, { jobs, day, slack }: Asked): string {
  const spare = slack > 0 ? ` with ${hoursText(slack)} to spare` : '';
  switch (rule.kind) {
    case 'late': {
      const none = orders === of ? 'No order' : `Of ${of} orders, ${orders} keep all else, but none of them`;
      const best = `the best (${orderText(nearest, jobs)}) ends ${clockText(rule.ends)}`;
      return `${none} ends by ${clockText(day.endsBy)}${spare}: ${best}.`;
    }
    case 'recoat': {
      const late = `${rule.job}: ${rule.block} comes ${hoursText(rule.over)} or more too late`;
      return `${inOrders(orders, of)} ${late}: it must follow within ${hoursText(rule.most)}${spare}.`;
    }
    case 'grinder': {
      const held =
        rule.held.length === 0 ? 'the crew has none' : `${grinderWords(day.grinders)} ${rule.held.join(', ')}`;
      return `${inOrders(orders, of)} ${rule.job}: ${rule.block} needs a grinder, and ${held}.`;
    }
    default:
      return rule satisfies never;
  }
}

function inOrders(orders: number, of: number): string {
  return orders === of ? 'In every order' : `In ${orders} of ${of} orders`;
}

function grinderWords(grinders: number): string {
  return grinders === 1 ? 'the only one is held at' : `all ${grinders} are held at`;
}

function refusalText(refusal: Refusal): string {
  switch (refusal.kind) {
    case 'jobs':
      return `Choose 1 to ${mostJobs} jobs for one day, not ${refusal.count}.`;
    case 'same_name':
      return `Two jobs are called ${refusal.name}: give each a name of its own.`;
    case 'no_blocks':
      return `${refusal.job} has no work on this day.`;
    case 'bad_hours':
      return `${refusal.job}: ${refusal.block} needs its hours and its cure as numbers, 0 or more.`;
    case 'bad_day':
      return 'The day needs a start, an end, drives and time to spare as numbers, and a whole number of grinders.';
    case 'no_window':
      return `${refusal.job}: what follows ${refusal.block} must come before its cure is over: allow a longer time.`;
    case 'no_drive':
      return `Give the drive between ${refusal.from} and ${refusal.to}.`;
    case 'orders':
      return `There are ${refusal.count} orders of so many blocks, and at most ${mostOrders} are tried: join blocks that follow each other.`;
    default:
      return refusal satisfies never;
  }
}
