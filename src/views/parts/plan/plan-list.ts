import { html, nothing, type TemplateResult } from 'lit';
import { repeat } from 'lit/directives/repeat.js';
import type { MeasuredArea, MeasuredCorner } from './measured-floor.ts';
import type { PlanMeasure } from './plan-measure.ts';
import { areaOutline } from './shape-outline.ts';

/** What may be done with the corners of one area. */
export interface CornerKeys {
  /** Row of the area. */
  readonly area: string;
  readonly add: (corner: MeasuredCorner) => void;
  readonly remove: (corner: MeasuredCorner) => void;
}

/** Every length of a plan in words: what is drawn, for who cannot see it, and what had no room on the drawing. */
export function planList(
  areas: readonly MeasuredArea[],
  measure: PlanMeasure,
  keys: CornerKeys | undefined,
): TemplateResult {
  const others = areas.filter(({ shape }) => shape !== 'corners');
  const byCorners = areas.filter(({ shape }) => shape === 'corners');
  return html`
    ${others.length === 0 ? nothing : html`<ul>${others.map((area) => html`<li>${areaWords(area, measure)}</li>`)}</ul>`}
    ${repeat(
      byCorners,
      ({ row }) => row,
      (area) => cornerTable(area, measure, keys?.area === area.row ? keys : undefined),
    )}
  `;
}

/** An area in one sentence: its shape, its sides in order, its size. */
export function areaWords(area: MeasuredArea, measure: PlanMeasure): string {
  const outline = areaOutline(area);
  const size = area.area === undefined ? '' : `, ${measure.area(area.area)}`;
  if (outline.kind === 'not drawn') return `${area.label}: not drawn, ${outline.why}`;
  if (!outline.isTrue) return `${area.label}: shape not known${size}`;
  const sides = outline.sides.map(({ feet, words }) => measure.spoken(feet) + words).join(', ');
  return `${area.label} (${area.shapeWords}): ${sides}${size}`;
}

function cornerTable(area: MeasuredArea, measure: PlanMeasure, keys: CornerKeys | undefined): TemplateResult {
  const size = area.area === undefined ? '' : ` · ${measure.area(area.area)}`;
  return html`<div class="wide"><table>
    <caption>${area.label}${size}</caption>
    <thead>
      <tr>
        <th scope="col">Corner</th>
        <th scope="col">Across</th>
        <th scope="col">Along</th>
        <th scope="col">Side</th>
        ${keys === undefined ? nothing : html`<td></td>`}
      </tr>
    </thead>
    <tbody>
      ${repeat(
        area.corners,
        ({ row }) => row,
        (corner, at) => cornerRow(area, corner, at, measure, keys),
      )}
    </tbody>
  </table></div>`;
}

function cornerRow(
  area: MeasuredArea,
  corner: MeasuredCorner,
  at: number,
  measure: PlanMeasure,
  keys: CornerKeys | undefined,
): TemplateResult {
  const next = area.corners[(at + 1) % area.corners.length] ?? corner;
  const side = Math.hypot(next.across - corner.across, next.along - corner.along);
  const number = at + 1;
  return html`<tr>
    <th scope="row">${number}</th>
    <td>${measure.length(corner.across)}</td>
    <td>${measure.length(corner.along)}</td>
    <td>${measure.length(side)}</td>
    ${
      keys === undefined
        ? nothing
        : html`<td class="keys">
          <button type="button" aria-label="Add a corner on side ${number} of ${area.label}" @click=${() => keys.add(corner)}>+</button>
          <button type="button" aria-label="Take corner ${number} of ${area.label} away" @click=${() => keys.remove(corner)}>✕</button>
        </td>`
    }
  </tr>`;
}
