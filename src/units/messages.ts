/** The words of this folder: each says what is wrong and what would be right. */
export const messages = {
  unitMissing: 'Write a unit such as ft2, $/h or 1.',
  unitMalformed: (part: string) => `“${part}” is not a unit: write units such as ft2, lb/gal or 1/h.`,
  unitUnknown: (part: string, near: string | undefined) =>
    near === undefined ? `No unit is called “${part}”.` : `No unit is called “${part}”: did you mean ${near}?`,
  timesAfterDivide: (part: string) =>
    `“${part}” follows a /: write what is multiplied before the first /, and each divisor with its own /.`,
  pointCombined: (point: string, difference: string) =>
    `${point} is a point on a scale and stands alone: use ${difference} for a difference.`,
  powerOfCount: (name: string) => `“${name}” only counts and has no powers.`,

  numberMissing: (example: string) => `Type a number, such as ${example}.`,
  tooLong: (limit: number) => `Write it in at most ${limit} characters.`,
  notANumber: (text: string, example: string) => `“${text}” is not a number: type a number such as ${example}.`,
  notInNumber: (text: string, example: string) => `“${text}” does not belong in a number such as ${example}.`,
  separators: (run: string) => `“${run}” is not clear: write it like 1,234.5.`,
  exponent: 'Write the number in full, without e.',
  tooLarge: 'The result is too large to be a number here.',
  tooSmall: 'The result is too small to be told from 0.',
  divisionByZero: 'This divides by 0: change the divisor.',
  numberExpected: (after: string) => `A number is missing after “${after}”.`,
  twoNumbers: (first: string) => `Put + - * or / between the numbers after “${first}”.`,
  parenthesis: 'Parentheses do not match: each ( needs its ).',
  spacedMinus:
    'A dash without spaces on both sides is not clear in a length: write 24 - 2 with spaces to subtract, or 24\' 2" for feet and inches.',

  wrongUnit: (typed: string, wanted: string) =>
    wanted === ''
      ? `“${typed}” is not wanted here: type the number alone.`
      : `“${typed}” is not the unit here: type the number in ${wanted}, with the unit once at the end or left out.`,
  noDollars: (wanted: string) => `This is no amount of money: type the number${wanted === '' ? '' : ` in ${wanted}`}.`,
  noFeetMarks: 'Feet and inch marks belong to lengths and areas: type a plain number.',
  feetPower: (wanted: string) =>
    `With these feet and inch marks the result is not in ${wanted}: give each length its mark, and no other number.`,
  unlikeLengths: 'A length and an area cannot be added: give each number its own mark.',
  wholeFeet: (feet: string) =>
    `Feet beside inches are whole: write ${feet} as a decimal alone, or whole feet and inches.`,
  inchesUnderTwelve: (inches: string) => `Inches beside feet stay below 12, and this says ${inches}.`,
  subtractOrInches: (first: string, second: string) =>
    `Inches beside feet stay below 12: write ${first} - ${second} with spaces to subtract.`,
  feetThenFraction: (whole: string, fraction: string) =>
    `“${whole} ${fraction}” may be feet or inches: write ${whole} ${fraction}" for inches, ${whole}' ${fraction}" for feet and inches, or a decimal for feet.`,
  dashFraction: (feet: string, fraction: string) =>
    `“${feet}-${fraction}” may be feet or inches: write ${feet}' ${fraction}" for feet and inches, or ${feet} ${fraction}" for inches.`,
  fraction: (text: string) => `“${text}” is not a fraction such as 3/8.`,

  dateWanted: 'Type a date as year-month-day, such as 2026-03-09.',
  noSuchDay: (text: string) => `There is no day ${text}: check the month and the day.`,
  dateTooEarly: 'Dates begin with 1899-12-30.',
} as const;
