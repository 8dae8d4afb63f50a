import { html, LitElement, nothing, svg, type TemplateResult } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import { repeat } from 'lit/directives/repeat.js';
import type { OutlineCorner } from '../../../trade/crossing-sides.ts';
import { sharedStyles } from '../shared.styles.ts';
import { type CornerDrag, dragRefusal, snapped, stepped } from './corner-drag.ts';
import { cornerHandlesStyles } from './corner-handles.styles.ts';
import type { MeasuredArea, MeasuredCorner } from './measured-floor.ts';
import type { PlanPlacement } from './place-areas.ts';
import { placeAt, type Spot, spotOf } from './plan-geometry.ts';
import type { PlanMeasure } from './plan-measure.ts';

/** What is asked of a corner. */
export type CornerAsk =
  /** Under way; nothing is to change in the quote. */
  | { readonly kind: 'moving'; readonly drag: CornerDrag }
  /** Let go of. */
  | { readonly kind: 'placed'; readonly drag: CornerDrag }
  /** Taken back while under way. */
  | { readonly kind: 'left' }
  | { readonly kind: 'refused'; readonly reason: string }
  | { readonly kind: 'add'; readonly after: MeasuredCorner }
  | { readonly kind: 'remove'; readonly corner: MeasuredCorner };

interface Grip {
  readonly pointer: number;
  readonly corner: MeasuredCorner;
  /** From the pointer to the corner, so that it does not jump. */
  readonly aside: Spot;
}

/** Half of a target for a thumb. */
const reach = 22;
const knob = 8;
const arrows = ['ArrowUp', 'ArrowDown', 'ArrowLeft', 'ArrowRight'];

/**
 * The corners of one area over its plan, to be dragged or moved by arrow keys. It shows where they are and asks; the plan
 * decides.
 *
 * @fires corner-asked
 */
@customElement('corner-handles')
export class CornerHandles extends LitElement {
  static override styles = [sharedStyles, cornerHandlesStyles];

  @property({ attribute: false }) area: MeasuredArea | undefined;
  @property({ attribute: false }) placement: PlanPlacement | undefined;
  @property({ attribute: false }) measure: PlanMeasure | undefined;
  @property({ attribute: false }) drag: CornerDrag | undefined;

  private grip: Grip | undefined;

  focusCorner(row: string): void {
    this.groups()
      .find((group) => group.dataset.row === row)
      ?.focus();
  }

  override render(): TemplateResult | typeof nothing {
    const { area, placement } = this;
    if (area === undefined || placement === undefined) return nothing;
    return html`<svg
      role="application"
      aria-label="Corners of ${area.label}: arrow keys move one, with Shift further; Insert adds one after it, Delete takes it away"
      viewBox="0 0 ${placement.width} ${placement.height}"
    >
      ${repeat(
        area.corners,
        ({ row }) => row,
        (corner, at) => this.handle(area, corner, at, placement),
      )}
    </svg>`;
  }

  private handle(area: MeasuredArea, corner: MeasuredCorner, at: number, placement: PlanPlacement): TemplateResult {
    const place = this.placeOf(corner);
    const { x, y } = spotOf(place, area.row, placement);
    const spoken = this.measure?.spoken ?? String;
    const name = `corner ${at + 1} of ${area.label}, across ${spoken(place.across)}, along ${spoken(place.along)}`;
    return svg`<g
      class=${this.drag?.corner === corner.row ? 'held' : ''}
      role="button"
      tabindex="0"
      aria-label=${name}
      data-row=${corner.row}
      transform="translate(${x} ${y})"
      @touchstart=${this.onTouch}
      @pointerdown=${this.onDown}
      @pointermove=${this.onMove}
      @pointerup=${this.onUp}
      @pointercancel=${this.onCancel}
      @keydown=${(event: KeyboardEvent) => this.onKey(event, area, corner)}
      @keyup=${(event: KeyboardEvent) => this.onKeyUp(event)}
      @blur=${() => this.onBlur()}
    >
      <circle class="reach" r=${reach}></circle>
      <circle class="ring" r=${knob + 6}></circle>
      <circle class="knob" r=${knob}></circle>
    </g>`;
  }

  private placeOf(corner: MeasuredCorner): OutlineCorner {
    return this.drag?.corner === corner.row ? this.drag.to : corner;
  }

  /** Keeps the page still: browsers pass over the `touch-action` of what is drawn. */
  private readonly onTouch = (event: TouchEvent): void => event.preventDefault();

  /** Targets may lie on each other: the corner nearest to the pointer is meant. */
  private readonly onDown = (event: PointerEvent): void => {
    const { area, placement } = this;
    if (area === undefined || placement === undefined || event.button !== 0 || this.grip !== undefined) return;
    this.place();
    const pointer = this.spotUnder(event);
    const near = area.corners
      .map((corner) => {
        const spot = spotOf(corner, area.row, placement);
        return { corner, aside: { x: spot.x - pointer.x, y: spot.y - pointer.y } };
      })
      .sort((a, b) => Math.hypot(a.aside.x, a.aside.y) - Math.hypot(b.aside.x, b.aside.y))[0];
    if (near === undefined) return;
    event.preventDefault();
    this.focusCorner(near.corner.row);
    this.grip = { pointer: event.pointerId, ...near };
    if (event.currentTarget instanceof Element) event.currentTarget.setPointerCapture(event.pointerId);
  };

  private readonly onMove = (event: PointerEvent): void => {
    const { area, placement, measure, grip } = this;
    if (grip?.pointer !== event.pointerId || area === undefined || placement === undefined || measure === undefined)
      return;
    const pointer = this.spotUnder(event);
    const within = (value: number, most: number): number => Math.min(most, Math.max(0, value));
    const spot = {
      x: within(pointer.x + grip.aside.x, placement.width),
      y: within(pointer.y + grip.aside.y, placement.height),
    };
    const to = snapped(placeAt(spot, area.row, placement), area, grip.corner.row, measure);
    const from = this.placeOf(grip.corner);
    if (to.across === from.across && to.along === from.along) return;
    this.ask({ kind: 'moving', drag: { area: area.row, corner: grip.corner.row, to } });
  };

  private readonly onUp = (event: PointerEvent): void => {
    if (this.grip?.pointer !== event.pointerId) return;
    this.place();
  };

  private readonly onCancel = (event: PointerEvent): void => {
    if (this.grip?.pointer === event.pointerId) this.leave();
  };

  private onKey(event: KeyboardEvent, area: MeasuredArea, corner: MeasuredCorner): void {
    const { key } = event;
    if (arrows.includes(key) && this.grip === undefined) this.step(event, area, corner);
    else if (key === 'Escape' && (this.drag !== undefined || this.grip !== undefined)) this.leave();
    else if (key === 'Delete' || key === 'Backspace') this.ask({ kind: 'remove', corner });
    else if (key === 'Insert' || key === '+') this.ask({ kind: 'add', after: corner });
    else return;
    event.preventDefault();
    event.stopPropagation();
  }

  private step(event: KeyboardEvent, area: MeasuredArea, corner: MeasuredCorner): void {
    const { measure } = this;
    if (measure === undefined) return;
    const by = event.shiftKey ? measure.longStep : measure.step;
    const to = stepped(this.placeOf(corner), event.key, by, measure.step);
    if (to === undefined) return;
    const drag = { area: area.row, corner: corner.row, to };
    const reason = dragRefusal(area, drag);
    this.ask(reason === undefined ? { kind: 'moving', drag } : { kind: 'refused', reason });
  }

  /** Held keys are one change, made when the key is let go. */
  private onKeyUp({ key }: KeyboardEvent): void {
    if (arrows.includes(key) && this.grip === undefined) this.place();
  }

  /** A drag that loses the page is taken back; what keys did stands. */
  private onBlur(): void {
    if (this.grip === undefined) this.place();
    else this.leave();
  }

  private place(): void {
    this.grip = undefined;
    if (this.drag !== undefined) this.ask({ kind: 'placed', drag: this.drag });
  }

  private leave(): void {
    this.grip = undefined;
    this.ask({ kind: 'left' });
  }

  private spotUnder({ clientX, clientY }: PointerEvent): Spot {
    const box = this.getBoundingClientRect();
    const scale = box.width === 0 ? 1 : (this.placement?.width ?? box.width) / box.width;
    return { x: (clientX - box.left) * scale, y: (clientY - box.top) * scale };
  }

  private groups(): SVGElement[] {
    return [...(this.renderRoot?.querySelectorAll('g') ?? [])];
  }

  private ask(detail: CornerAsk): void {
    this.dispatchEvent(new CustomEvent<CornerAsk>('corner-asked', { detail }));
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'corner-handles': CornerHandles;
  }
}
