import { didYouMean } from '../units/nearest-word.ts';
import type { Checked, ValueType } from './checked-tree.ts';
import { nearestName } from './nearest-name.ts';
import { faulty, fits, isZero, typeWords } from './value-type.ts';

/** Reports that an argument is not what its function takes. */
export type Refuse = (argument: Checked, reason: string) => void;

/** The type that all arms have: numbers in one unit, which zeros take from the rest, or all codes, or all conditions. */
export function alikeArms(arms: readonly Checked[], refuse: Refuse, mustBe: string): ValueType {
  const leader = arms.find((arm) => !isZero(arm)) ?? arms[0];
  if (leader === undefined || arms.some((arm) => arm.type.kind === 'faulty')) return faulty;
  const { type } = leader;
  const unlike = arms.filter((arm) => (type.kind === 'number' ? !fits(arm, type.unit) : arm.type.kind !== type.kind));
  for (const arm of unlike)
    refuse(arm, `${mustBe} must be alike: one is ${typeWords(type)}, the other ${typeWords(arm.type)}.`);
  if (unlike.length > 0) return faulty;
  return type.kind === 'code' ? arms.map((arm) => arm.type).reduce(eitherCode) : type;
}

/** The type of what is one code or the other; of what is not a code it is faulty. */
export function eitherCode(yes: ValueType, no: ValueType): ValueType {
  if (yes.kind !== 'code' || no.kind !== 'code') return faulty;
  const products = yes.products && no.products ? [...new Set([...yes.products, ...no.products])] : undefined;
  const codes = yes.codes && no.codes ? [...new Set([...yes.codes, ...no.codes])] : undefined;
  return { kind: 'code', ...(codes && { codes }), ...(products && { products }) };
}

/**
 * The type of `SWITCH(choice, code, arm, …)`, which gives the arm behind the code that the choice has. Every code that the
 * choice may have has its arm, so that one is always taken.
 */
export function chosenArm(args: readonly Checked[], refuse: Refuse): ValueType {
  const [choice, ...pairs] = args;
  if (choice === undefined) return faulty;
  const options = optionsOf(choice, refuse);
  if (options !== undefined) tellCodes(choice, options, pairs.filter(isAtCode), refuse);
  return alikeArms(
    pairs.filter((_, place) => !isAtCode(_, place)),
    refuse,
    'All arms of SWITCH',
  );
}

function isAtCode(_: Checked, place: number): boolean {
  return place % 2 === 0;
}

/** The codes a choice may have; undefined, and told, where they are not all known. */
function optionsOf(choice: Checked, refuse: Refuse): readonly string[] | undefined {
  const { type } = choice;
  if (type.kind === 'faulty') return undefined;
  if (type.kind !== 'code') refuse(choice, `SWITCH chooses by a code, and this is ${typeWords(type)}.`);
  else if (type.products !== undefined)
    refuse(choice, 'SWITCH chooses among options that are known, and any product of the price list may stand here.');
  else if (type.codes === undefined)
    refuse(choice, 'SWITCH chooses among options that are known, and any code may stand here.');
  else return type.codes;
  return undefined;
}

/** Tells what is no option, what stands twice, and which options no arm is for. */
function tellCodes(choice: Checked, options: readonly string[], codes: readonly Checked[], refuse: Refuse): void {
  const met = new Set<string>();
  for (const code of codes) {
    if (code.type.kind === 'faulty') continue;
    if (code.kind !== 'code') {
      refuse(code, 'A code in quotation marks is wanted here.');
      continue;
    }
    const { value } = code;
    if (met.has(value)) refuse(code, `“${value}” has its arm already.`);
    met.add(value);
    if (options.includes(value)) continue;
    const near = nearestName(value, options);
    refuse(code, `“${value}” is never among ${options.join(', ')}.${didYouMean(near)}`);
    // The arm that was meant for it is there.
    if (near !== undefined) met.add(near);
  }
  const without = options.filter((option) => !met.has(option));
  if (without.length > 0) refuse(choice, `SWITCH has no arm for “${without.join('”, “')}”.`);
}
