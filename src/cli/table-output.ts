import { unitOf } from '../formula/value-type.ts';
import type { OptionResults } from '../quote/option-results.ts';
import { saidTexts, togetherByLabel } from '../quote/said-texts.ts';
import { openChecks, type ToldCheck } from '../quote/told-checks.ts';
import { writtenNotes } from '../quote/written-notes.ts';
import { resultLines, resultsIn } from '../template/result-lines.ts';
import { formatNumber, unitSuffix } from '../units/format.ts';
import type { Measures } from '../units/measures.ts';
import { labelIn } from '../units/said-units.ts';
import { briefLines, priceText } from './brief-output.ts';
import { failureWords } from './failure-words.ts';
import { hoursLines } from './hours-output.ts';
import { lineIn, type TypedValue, wordsOf } from './option-cells.ts';
import type { PricedSystem } from './price-systems.ts';
import { purchaseLines } from './purchases-output.ts';
import { layTable, pageWidth, plain, wrap } from './text-layout.ts';
import { saysTheSame, toldTogether } from './told-once.ts';

const severities: readonly ToldCheck['severity'][] = ['stop', 'caution', 'note'];
/** The hours tell those of the crew’s time. */
const ofHours: readonly string[] = resultsIn('crew time');

/**
 * What to buy, hours, money, what the customer is told, checks and price of each system, for a terminal. Of several, what
 * more than one is cautioned of stands once behind them, and then their prices.
 */
export function tableOutput(systems: readonly PricedSystem[], measures: Measures = 'us'): string {
  const checked = systems.map(({ sheet, results }) => ({
    title: sheet.title,
    checks: openChecks(results, measures).toSorted(worstFirst),
  }));
  const together = toldTogether(checked);
  const shared = together.flatMap(({ checks }) => checks);
  const blocks = systems.map(({ sheet, results }, at) =>
    joined([
      headLines(sheet.title, sheet.id, results, measures),
      purchaseLines(results, measures),
      hoursLines(results, measures),
      moneyLines(results, measures),
      customerLines(results, measures),
      writtenLines(results),
      ownCheckLines(checked[at]?.checks ?? [], shared),
      priceLines(sheet.title, results, checked[at]?.checks ?? [], measures),
    ]),
  );
  if (systems.length > 1)
    blocks.push(
      joined([
        ...together.map(({ titles, checks }) => [
          ...wrap(`CHECKS OF ${titles.length === systems.length ? 'ALL OF THEM' : titles.join(' AND ')}`, ''),
          ...checks.flatMap(checkLines),
        ]),
        ['PRICES', ...briefLines(systems, measures)],
      ]),
    );
  return `${blocks.join(`\n\n${'─'.repeat(pageWidth)}\n\n`)}\n`;
}

function joined(sections: readonly (readonly string[])[]): string {
  return sections
    .filter((lines) => lines.length > 0)
    .map((lines) => lines.join('\n'))
    .join('\n\n');
}

function worstFirst(a: ToldCheck, b: ToldCheck): number {
  return severities.indexOf(a.severity) - severities.indexOf(b.severity);
}

function ownCheckLines(checks: readonly ToldCheck[], shared: readonly ToldCheck[]): string[] {
  if (checks.length === 0) return ['Every check holds.'];
  const own = checks.filter((check) => !shared.some((other) => saysTheSame(check, other)));
  return [
    'CHECKS',
    ...(own.length === 0 ? ['  Those told at the end, with other systems’.'] : own.flatMap(checkLines)),
  ];
}

function headLines(title: string, id: string, results: OptionResults, measures: Measures): string[] {
  const floor = wordsOf(lineIn(results, 'floor_area'), measures);
  return wrap([title, id, ...(floor === '' ? [] : [floor])].join(' · '), '');
}

/** Numbers are aligned at their end, units behind them. */
function moneyLines(results: OptionResults, measures: Measures): string[] {
  const rows = resultLines.flatMap((name): string[][] => {
    const typed = ofHours.includes(name) ? undefined : lineIn(results, name);
    if (typed === undefined) return [];
    const label = results.stack.lines.get(name)?.definition.label ?? name;
    return [[labelIn(label, unitOf(typed.type), measures), ...numberAndUnit(typed, measures)]];
  });
  return ['MONEY', ...layTable([left, { heading: '', align: 'right' }, left], rows)];
}

const left = { heading: '', align: 'left' } as const;

function numberAndUnit(typed: TypedValue, measures: Measures): [string, string] {
  const { value, type } = typed;
  if (typeof value !== 'number' || type.kind !== 'number') return ['', wordsOf(typed, measures)];
  const number = formatNumber(value, type.unit, { measures });
  return [number, unitSuffix(type.unit, number, measures)];
}

/** What a customer is told with the price: what it includes, then on what terms. */
function customerLines(results: OptionResults, measures: Measures): string[] {
  const said = (['allowances', 'terms'] as const).flatMap((use) => togetherByLabel(saidTexts(results, use, measures)));
  const lines = said.flatMap(({ text }) => wrap(text, '  · '));
  return lines.length === 0 ? [] : ['THE CUSTOMER IS TOLD', ...lines];
}

/** Names and other words that people wrote; customers are told none of them. */
function writtenLines(results: OptionResults): string[] {
  const notes = writtenNotes(results).flatMap(({ label, words }) => wrap(`${label}: ${words}`, '  · '));
  return notes.length === 0 ? [] : ['WRITTEN DOWN, NOT FOR THE CUSTOMER', ...notes];
}

function checkLines(check: ToldCheck): string[] {
  const noWayRound = check.severity === 'stop' && check.absolute ? ' (No way round.)' : '';
  return wrap(check.says + noWayRound, `  ${check.severity.padEnd(9)}`);
}

function priceLines(title: string, results: OptionResults, checks: readonly ToldCheck[], measures: Measures): string[] {
  const price = lineIn(results, 'price');
  if (price === undefined || typeof price.value !== 'number' || price.type.kind !== 'number') {
    const why = typeof price?.value === 'object' ? failureWords(results, price.value) : '';
    return wrap(`${title}: the price is incomplete. ${why}`, '  ');
  }
  const stops = checks.filter(({ severity }) => severity === 'stop').length;
  const words = [
    plain(title),
    priceText(results),
    wordsOf(lineIn(results, 'price_per_sqft'), measures),
    ...(stops === 0 ? [] : [`not for sale: ${stops} stop${stops === 1 ? '' : 's'} above`]),
  ];
  return wrap(words.join(' · '), '  ');
}
