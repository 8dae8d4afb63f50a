import { messages } from './messages.ts';

export type DecimalResult =
  | { readonly kind: 'number'; readonly value: number }
  | { readonly kind: 'fault'; readonly reason: string };

const plain = /^(\d+\.?\d*|\.\d+)$/;
const commaDecimal = /^(\d*),(\d+)$/;
const commaThousands = /^[1-9]\d{0,2}(,\d{3})+(\.\d*)?$/;
const pointThousands = /^[1-9]\d{0,2}(\.\d{3})+,\d+$|^[1-9]\d{0,2}(\.\d{3}){2,}$/;

/**
 * Reads digits with separators: '1,234.5' and '1.234,5' are 1234.5; one comma before exactly three digits groups
 * thousands ('1,234' is 1234), any other single comma is a decimal comma ('3,5' is 3.5, '0,125' is 0.125); one
 * point is always a decimal point. What fits none of these is a fault, never a guess.
 */
export function readDecimal(run: string): DecimalResult {
  const digits = decimalPoint(run);
  if (digits === undefined) return { kind: 'fault', reason: messages.separators(run) };
  const value = Number(digits);
  if (!Number.isFinite(value)) return { kind: 'fault', reason: messages.tooLarge };
  if (value === 0 && /[1-9]/.test(digits)) return { kind: 'fault', reason: messages.tooSmall };
  return { kind: 'number', value };
}

/** The run with a decimal point and no thousands; undefined when it is not clear. */
function decimalPoint(run: string): string | undefined {
  if (plain.test(run)) return run;
  if (commaThousands.test(run)) return run.replaceAll(',', '');
  if (pointThousands.test(run)) return run.replaceAll('.', '').replace(',', '.');
  return commaDecimal.test(run) ? run.replace(',', '.') : undefined;
}
