/**
 * DATE and WEEKDAY on serial days (epoch 1899-12-30), as OpenFormula defines them and HyperFormula 3.5.0 works them out.
 * NaN where there is no answer.
 */
const millisecondsPerDay = 86_400_000;
const epoch = Date.UTC(1899, 11, 30);
const lastDay = 2_958_465;
const firstYear = 1582;
const monthsPerYear = 12;

/** Months and days past the end of their year or month run on; years below 1900 count from 1900. */
export function serialDayOf(yearGiven: number, monthGiven: number, dayGiven: number): number {
  let year = Math.trunc(yearGiven);
  let month = Math.trunc(monthGiven);
  if (year < 1900) year += 1900;
  const yearsOn = Math.floor((month - 1) / monthsPerYear);
  year += yearsOn;
  month -= yearsOn * monthsPerYear;
  if (!(year >= firstYear) || year > 9999) return Number.NaN;
  const serial = (Date.UTC(year, month - 1, 1) - epoch) / millisecondsPerDay + (Math.trunc(dayGiven) - 1);
  return serial > lastDay || serial < 0 ? Number.NaN : serial;
}

/** Days from 0001-01-01 (day 1) to the epoch, as the engine counts them; a Monday is 1 modulo 7. */
const epochOnWeekScale = 693_958;
/** First day of the week for each numbering, after OpenFormula's WEEKDAY. */
const firstDays: Readonly<Record<number, number>> = { 1: 0, 2: 1, 11: 1, 12: 2, 13: 3, 14: 4, 15: 5, 16: 6, 17: 0 };
const daysPerWeek = 7;

/** Day of the week; by default 1 is Sunday and 7 Saturday. */
export function weekdayOf(serialDay: number, numbering = 1): number {
  if (serialDay < 0) return Number.NaN;
  const day = Math.floor(serialDay + epochOnWeekScale);
  if (numbering === 3) return (day - 1) % daysPerWeek;
  const first = firstDays[numbering];
  return first === undefined ? Number.NaN : ((day - first) % daysPerWeek) + 1;
}
