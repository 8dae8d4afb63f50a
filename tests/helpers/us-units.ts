/** Units of feet, gallons, pounds and °F, as numbers have them behind; labels have them in words. */
const behindNumbers = /(?<![\w_.])(ft|gal|mil|mi|lb|oz|°F|in)[²³]?(?![\w_(])/g;
const inWords = /(?<![.\w])(square f(oo|ee)t|gallons?|pounds?|ounces?|miles?|Fahrenheit)\b/gi;

/**
 * US units in a text that people see, with a few letters around each. `in` counts only behind a number or a stroke, since
 * it is a word too; a flake's size (1/4 in) is the name of a product.
 */
export function usUnitsIn(text: string): readonly string[] {
  const around = (at: number): string => text.slice(Math.max(0, at - 20), at + 20);
  const units = [...text.matchAll(behindNumbers)].filter((match) => match[1] !== 'in' || isUnit(text, match.index));
  return [...units, ...text.matchAll(inWords)].map(({ index }) => around(index));
}

function isUnit(text: string, at: number): boolean {
  const before = text.slice(0, at).trimEnd();
  return (/[\d/·]$/.test(before) || before === '') && !/\d\/\d+$/.test(before) && !/^in \w/.test(text.slice(at));
}
