/** A curve of small plots: what it is called, and points from left to right. */
export interface Curve {
  readonly name: string;
  readonly points: readonly (readonly [across: number, up: number])[];
}

export interface Axes {
  readonly title: string;
  readonly across: string;
  readonly up: string;
}

const wide = 240;
const high = 150;
const margin = { left: 52, right: 12, top: 26, bottom: 34 } as const;
const perRow = 3;

/** Small plots beside each other, each to its own scale from 0, as an SVG. */
export function smallPlots(curves: readonly Curve[], axes: Axes): string {
  const rows = Math.ceil(curves.length / perRow);
  const [width, height] = [wide * perRow, high * rows];
  const plots = curves.map((curve, at) => {
    const [column, row] = [at % perRow, Math.floor(at / perRow)];
    return `<g transform="translate(${column * wide} ${row * high})">${plot(curve, axes)}</g>`;
  });
  return [
    `<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 ${width} ${height}" width="${width}" height="${height}"`,
    ' font-family="sans-serif" font-size="10" fill="#333">',
    `<title>${axes.title}</title>`,
    `<rect width="${width}" height="${height}" fill="#fff"/>`,
    ...plots,
    '</svg>\n',
  ].join('');
}

function plot({ name, points }: Curve, { across, up }: Axes): string {
  const most = (part: 0 | 1): number => Math.max(...points.map((point) => point[part]));
  const [right, top] = [most(0), most(1) * 1.05];
  const [inner, tall] = [wide - margin.left - margin.right, high - margin.top - margin.bottom];
  const x = (value: number): string => (margin.left + (value / right) * inner).toFixed(1);
  const y = (value: number): string => (margin.top + tall - (value / top) * tall).toFixed(1);
  const line = points.map(([at, value]) => `${x(at)},${y(value)}`).join(' ');
  const label = (at: string, to: string, anchor: string, words: string): string =>
    `<text x="${at}" y="${to}" text-anchor="${anchor}">${words}</text>`;
  const floor = high - margin.bottom;
  return [
    label(`${margin.left}`, '16', 'start', `<tspan font-weight="bold">${name}</tspan>`),
    `<path d="M${margin.left} ${margin.top}V${floor}H${wide - margin.right}" fill="none" stroke="#999"/>`,
    `<polyline points="${line}" fill="none" stroke="#0a6a5c" stroke-width="1.3"/>`,
    label(`${margin.left - 4}`, y(most(1)), 'end', most(1).toLocaleString('en-US')),
    label(`${margin.left - 4}`, `${floor}`, 'end', `${up} 0`),
    label(`${wide - margin.right}`, `${floor + 13}`, 'end', `${Math.round(right).toLocaleString('en-US')} ${across}`),
  ].join('');
}
