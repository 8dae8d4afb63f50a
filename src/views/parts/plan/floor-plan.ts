import { html, LitElement, nothing, type PropertyValues, svg, type TemplateResult } from 'lit';
import { customElement, property, state } from 'lit/decorators.js';
import type { Edit } from '../../../quote/edit.ts';
import { type OutlineFault, outlineFault } from '../../../trade/crossing-sides.ts';
import type { Measures } from '../../../units/measures.ts';
import { OwnWidth } from '../own-width.ts';
import { sharedStyles } from '../shared.styles.ts';
import { tell } from '../told-words.ts';
import { type CornerDrag, dragRefusal, floorWith, removalRefusal } from './corner-drag.ts';
import { addCornerEdit, drawByCornersEdit, moveCornerEdit, removeCornerEdit } from './corner-edits.ts';
import './corner-handles.ts';
import type { CornerAsk } from './corner-handles.ts';
import { floorPlanStyles } from './floor-plan.styles.ts';
import type { MeasuredArea, MeasuredCorner, MeasuredFloor } from './measured-floor.ts';
import type { PlanPlacement } from './place-areas.ts';
import { type DrawnArea, type DrawnSide, drawPlan, type PlanDrawing } from './plan-geometry.ts';
import { areaWords, planList } from './plan-list.ts';
import { planMeasure } from './plan-measure.ts';

const leastHeight = 240;
const mostHeight = 360;

interface Told {
  readonly words: string;
  readonly refused: boolean;
}

const nothingTold: Told = { words: '', refused: false };

/**
 * The plan of a floor to scale. An area's corners may be dragged or moved by keys; any other shape is first turned into its
 * corners. What would make sides cross is not taken, and said.
 *
 * @fires plan-edit - a change to the quote, one a drag
 * @fires told - what became of a corner, but not each step of its way
 */
@customElement('floor-plan')
export class FloorPlan extends LitElement {
  static override styles = [sharedStyles, floorPlanStyles];

  @property({ attribute: false }) floor: MeasuredFloor | undefined;
  @property() measures: Measures = 'us';

  /** Row of the area whose corners may be moved. */
  @state() private moving: string | undefined;
  @state() private drag: CornerDrag | undefined;
  @state() private told = nothingTold;

  private held: PlanPlacement | undefined;
  private readonly own = new OwnWidth(this);

  /** What was under way on a corner that is gone is gone with it. */
  protected override willUpdate(changed: PropertyValues<this>): void {
    if (!changed.has('floor') || this.drag === undefined) return;
    const { corner } = this.drag;
    if (!this.floor?.areas.some(({ corners }) => corners.some(({ row }) => row === corner))) this.stopDrag();
  }

  override render(): TemplateResult | typeof nothing {
    const { floor } = this;
    if (floor === undefined) return nothing;
    const { areas } = floorWith(floor, this.drag);
    const drawing = this.draw(areas);
    const measure = planMeasure(this.measures);
    const area = floor.areas.find(({ row, shape }) => row === this.moving && shape === 'corners');
    const keys = area && {
      area: area.row,
      add: (corner: MeasuredCorner) => this.addCorner(area, corner),
      remove: (corner: MeasuredCorner) => this.removeCorner(area, corner),
    };
    return html`<figure>
        <div class="sheet">
          ${this.sheet(drawing, areas.map((each) => areaWords(each, measure)).join('. '))}
          ${
            area === undefined || !drawing.placement.origins.has(area.row)
              ? nothing
              : html`<corner-handles
                .area=${area}
                .placement=${drawing.placement}
                .measure=${measure}
                .drag=${this.drag}
                @corner-asked=${(event: CustomEvent<CornerAsk>) => this.onAsked(event.detail, area)}
              ></corner-handles>`
          }
        </div>
        ${drawing.notDrawn.map(({ label, why }) => html`<p class="told refused">${label} is not drawn: ${why}.</p>`)}
      </figure>
      <p class="told ${this.told.refused ? 'refused' : ''}">${this.told.words}</p>
      <div class="tools">${floor.areas.map((each) => this.tool(each, floor))}</div>
      <details ?open=${area !== undefined}>
        <summary>Lengths in a list</summary>
        ${planList(areas, measure, keys)}
      </details>`;
  }

  private draw(areas: readonly MeasuredArea[]): PlanDrawing {
    const faults = new Map<string, OutlineFault>();
    for (const { row, shape, corners } of areas) {
      const fault = shape === 'corners' ? outlineFault(corners) : undefined;
      if (fault !== undefined) faults.set(row, fault);
    }
    const size = {
      width: this.own.width,
      mostHeight: Math.min(mostHeight, Math.max(leastHeight, this.own.width * 0.8)),
    };
    const held = this.drag === undefined ? undefined : this.held;
    const drawing = drawPlan(areas, { size, measure: planMeasure(this.measures), held, faults });
    this.held = drawing.placement;
    return drawing;
  }

  private sheet({ placement, areas, bar }: PlanDrawing, words: string): TemplateResult {
    return html`<svg
      class="drawing"
      role="img"
      aria-label="Plan of the floor, to scale. ${words}."
      viewBox="0 0 ${placement.width} ${placement.height}"
    >
      ${areas.map((area) => this.area(area))}
      ${
        bar === undefined
          ? nothing
          : svg`<path class="bar" d="M${bar.x} ${bar.y - 5}v5h${bar.length}v-5"></path>
            <text class="start" x=${bar.x + bar.length + 8} y=${bar.y - 2} dy="0.35em">${bar.words}</text>`
      }
    </svg>`;
  }

  private area({ points, sides, isTrue, name, label, size }: DrawnArea): TemplateResult {
    return svg`<g>
      <polygon class=${isTrue ? 'outline' : 'outline untrue'} points=${points}></polygon>
      ${sides.map((side) => this.side(side))}
      <text class="name in" x=${name.x} y=${name.y - 9} dy="0.35em">${label}</text>
      <text class="in" x=${name.x} y=${name.y + 9} dy="0.35em">${size}</text>
      ${isTrue ? nothing : svg`<text class="in" x=${name.x} y=${name.y + 26} dy="0.35em">shape not known</text>`}
    </g>`;
  }

  private side({ from, to, words, at, turn, hasRoom, isFaulty }: DrawnSide): TemplateResult {
    return svg`
      ${isFaulty ? svg`<line class="faulty" x1=${from.x} y1=${from.y} x2=${to.x} y2=${to.y}></line>` : nothing}
      ${hasRoom ? svg`<text transform="translate(${at.x} ${at.y}) rotate(${turn})" dy="0.35em">${words}</text>` : nothing}
    `;
  }

  private tool(area: MeasuredArea, floor: MeasuredFloor): TemplateResult | typeof nothing {
    const of = floor.areas.length > 1 ? ` ${area.label}` : '';
    const isMoving = this.moving === area.row;
    if (area.shape === 'corners')
      return html`<button class="plain" type="button" aria-pressed=${isMoving ? 'true' : 'false'} @click=${() => this.turnTo(isMoving ? undefined : area.row)}>
        Move corners${of === '' ? '' : ` of${of}`}
      </button>`;
    const edit = drawByCornersEdit(floor, area);
    if (edit === undefined) return nothing;
    return html`<button class="plain" type="button" aria-pressed="false" @click=${() => this.drawByCorners(area, edit)}>Draw${of} by corners</button>`;
  }

  private turnTo(row: string | undefined): void {
    this.stopDrag();
    this.moving = row;
    if (row === undefined) this.told = nothingTold;
    else this.say('Drag a corner, or move it with the arrow keys. In the list, + adds a corner on a side.');
  }

  private drawByCorners(area: MeasuredArea, edit: Edit): void {
    this.send(edit);
    this.turnTo(area.row);
  }

  private onAsked(ask: CornerAsk, area: MeasuredArea): void {
    switch (ask.kind) {
      case 'moving':
        this.drag = ask.drag;
        this.told = { words: placeWords(area, ask.drag, planMeasure(this.measures).length), refused: false };
        return;
      case 'placed':
        this.placed(area, ask.drag);
        return;
      case 'left':
        this.stopDrag();
        this.say('The corner is back where it was.');
        return;
      case 'refused':
        this.say(ask.reason, true);
        return;
      case 'add':
        this.addCorner(area, ask.after);
        return;
      case 'remove':
        this.removeCorner(area, ask.corner);
        return;
      default:
        ask satisfies never;
    }
  }

  private placed(area: MeasuredArea, drag: CornerDrag): void {
    this.stopDrag();
    const corner = area.corners.find(({ row }) => row === drag.corner);
    if (corner === undefined || (corner.across === drag.to.across && corner.along === drag.to.along)) return;
    const reason = dragRefusal(area, drag);
    if (reason !== undefined) {
      this.say(reason, true);
      return;
    }
    this.send(moveCornerEdit(area, corner, drag.to, planMeasure(this.measures)));
    tell(this, `${placeWords(area, drag, planMeasure(this.measures).spoken)}.`);
  }

  private addCorner(area: MeasuredArea, corner: MeasuredCorner): void {
    const { floor } = this;
    if (floor === undefined) return;
    this.stopDrag();
    this.send(addCornerEdit(floor, area, corner));
    this.say(`A corner was added on side ${area.corners.indexOf(corner) + 1}.`);
  }

  private removeCorner(area: MeasuredArea, corner: MeasuredCorner): void {
    this.stopDrag();
    const reason = removalRefusal(area, corner);
    if (reason !== undefined) {
      this.say(reason, true);
      return;
    }
    const at = area.corners.indexOf(corner);
    const beside = area.corners[at + 1] ?? area.corners[at - 1];
    this.send(removeCornerEdit(area, corner));
    this.say(`Corner ${at + 1} was taken away.`);
    // What had the focus is gone.
    void this.updateComplete.then(() =>
      this.renderRoot.querySelector('corner-handles')?.focusCorner(beside?.row ?? ''),
    );
  }

  /** On the page and to those who listen. */
  private say(words: string, refused = false): void {
    this.told = { words, refused };
    tell(this, words);
  }

  private stopDrag(): void {
    this.drag = undefined;
  }

  private send(edit: Edit): void {
    this.dispatchEvent(new CustomEvent<Edit>('plan-edit', { detail: edit, bubbles: true, composed: true }));
  }
}

function placeWords(
  { corners }: MeasuredArea,
  { corner, to }: CornerDrag,
  written: (length: number) => string,
): string {
  const number = corners.findIndex(({ row }) => row === corner) + 1;
  return `Corner ${number}: across ${written(to.across)}, along ${written(to.along)}`;
}

declare global {
  interface HTMLElementTagNameMap {
    'floor-plan': FloorPlan;
  }
}
