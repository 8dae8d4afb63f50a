/** Five rows of three dots a sign, from the top; narrow signs have fewer. */
const dots: Readonly<Record<string, readonly string[]>> = {
  '0': ['###', '# #', '# #', '# #', '###'],
  '1': [' # ', '## ', ' # ', ' # ', '###'],
  '2': ['###', '  #', '###', '#  ', '###'],
  '3': ['###', '  #', ' ##', '  #', '###'],
  '4': ['# #', '# #', '###', '  #', '  #'],
  '5': ['###', '#  ', '###', '  #', '###'],
  '6': ['###', '#  ', '###', '# #', '###'],
  '7': ['###', '  #', ' # ', ' # ', ' # '],
  '8': ['###', '# #', '###', '# #', '###'],
  '9': ['###', '# #', '###', '  #', '###'],
  $: [' ##', '## ', '###', ' ##', '## '],
  ',': ['  ', '  ', '  ', ' #', '# '],
  '.': [' ', ' ', ' ', ' ', '#'],
  '−': ['   ', '   ', '###', '   ', '   '],
};

/** A number in three lines of half blocks, so that it is the largest thing printed; undefined when a sign has no form. */
export function bigNumber(text: string): readonly string[] | undefined {
  const signs = [...text].map((sign) => dots[sign]);
  if (signs.some((sign) => sign === undefined)) return undefined;
  const rows = [0, 1, 2, 3, 4].map((row) => signs.map((sign) => sign?.[row]).join(' '));
  return [0, 2, 4].map((row) => halves(rows[row] ?? '', rows[row + 1] ?? '').trimEnd());
}

function halves(upper: string, lower: string): string {
  return [...upper]
    .map((dot, at) => {
      const below = lower[at] === '#';
      if (dot === '#') return below ? '█' : '▀';
      return below ? '▄' : ' ';
    })
    .join('');
}
