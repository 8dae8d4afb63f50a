import { html, LitElement, nothing, svg, type TemplateResult } from 'lit';
import { customElement, property, state } from 'lit/decorators.js';
import { classMap } from 'lit/directives/class-map.js';
import { OwnWidth } from '../../parts/own-width.ts';
import { alongRow, placeAfter } from '../../parts/roving-stop.ts';
import { sharedStyles } from '../../parts/shared.styles.ts';
import { stripChartStyles } from './strip-chart.styles.ts';
import {
  type DrawnBox,
  type DrawnDay,
  type DrawnLane,
  drawStrip,
  laneHeight,
  type StripDay,
  type StripTick,
} from './strip-geometry.ts';
import { type DrawnMark, hasRoomForWords } from './strip-labels.ts';

/**
 * Days as strips of hours: work, coats, waits and ways on one ruled axis. The table beside it says the same in words; where
 * pieces have keys of its rows and the strip is wide, each piece can be pointed at, by mouse or by arrow keys.
 *
 * @fires piece-pointed - the key of the piece that the mouse is over or that has focus, empty when none
 * @fires piece-kept - the key of a piece that was pressed
 */
@customElement('strip-chart')
export class StripChart extends LitElement {
  static override styles = [sharedStyles, stripChartStyles];

  @property({ attribute: false }) days: readonly StripDay[] = [];
  /** What the picture shows, for those who do not see it. */
  @property() words = '';
  /** The key of the piece that stands out. */
  @property() marked = '';
  /** The key of the piece that was pressed and stays marked. */
  @property() kept = '';

  /** The piece that Tab stops at in its day. */
  @state() private stop = '';

  private readonly own = new OwnWidth(this);

  override render(): TemplateResult {
    const { width, ticks, days } = drawStrip(this.days, this.own.width);
    return html`<svg class="patterns" width="0" height="0" aria-hidden="true">
          <defs>
            <pattern id="hatch" width="7" height="7" patternUnits="userSpaceOnUse" patternTransform="rotate(45)">
              <line class="hatch" x1="0" y1="0" x2="0" y2="7"></line>
            </pattern>
          </defs>
      </svg>
      ${days.map((day) => this.day(day, ticks, width))}`;
  }

  private day(day: DrawnDay, ticks: readonly StripTick[], width: number): TemplateResult {
    const pieces = hasRoomForWords(width) ? piecesOf(day) : [];
    const stop = pieces.find(({ key }) => key === this.stop) ?? pieces[0];
    const words = this.words === '' ? day.title : `${day.title}: ${this.words}`;
    return html`<figure>
        <figcaption>${day.title}</figcaption>
        <svg
          role=${pieces.length === 0 ? 'img' : 'toolbar'}
          aria-label=${words}
          width=${width}
          height=${day.height}
          viewBox="0 0 ${width} ${day.height}"
          @keydown=${(event: KeyboardEvent) => this.onKey(event, pieces)}
        >
          ${this.ruled(day, ticks)} ${day.lanes.map((lane) => this.lane(lane, pieces.length > 0, stop))}
        </svg>
      </figure>`;
  }

  private ruled({ axis, height }: DrawnDay, ticks: readonly StripTick[]): TemplateResult[] {
    return ticks.map(
      ({ x, words }) => svg`<line class="tick" x1=${x} x2=${x} y1=${axis - 4} y2=${height}></line>
        ${words === '' ? nothing : svg`<text class="hour" x=${x} y=${axis - 10}>${words}</text>`}`,
    );
  }

  private lane(
    { name, top, boxes, marks }: DrawnLane,
    takesPointing: boolean,
    stop: DrawnBox | undefined,
  ): TemplateResult {
    const foot = top + laneHeight;
    return svg`<text class="name" x="2" y=${top - 7}>${name}</text>
      ${marks.map((mark) => svg`<path class="leader" d=${leader(mark, foot)}></path>`)}
      ${boxes.map((box) => {
        const drawn = this.box(box, top);
        return takesPointing && box.key !== '' ? this.piece(box, drawn, box === stop) : drawn;
      })}
      ${marks.map(
        ({ words, key, x, anchor, drop }) =>
          svg`<text class=${classMap({ mark: true, [anchor]: true, marked: this.isMarked(key) })} x=${x} y=${foot + drop} dy="0.35em">${words}</text>`,
      )}`;
  }

  private box({ tone, x, width, words, key }: DrawnBox, top: number): TemplateResult {
    const marked = this.isMarked(key);
    return svg`<rect class=${classMap({ [tone]: true, marked })} x=${x} y=${top} width=${Math.max(1, width - 1)} height=${laneHeight}></rect>
      ${words === '' ? nothing : svg`<text class=${classMap({ in: true, [tone]: true, marked })} x=${x + width / 2} y=${top + laneHeight / 2} dy="0.35em">${words}</text>`}`;
  }

  private piece({ key, said }: DrawnBox, drawn: TemplateResult, isStop: boolean): TemplateResult {
    return svg`<g
      class="piece"
      role="button"
      aria-label=${said}
      aria-pressed=${key === this.kept ? 'true' : 'false'}
      tabindex=${isStop ? '0' : '-1'}
      data-key=${key}
      @pointerenter=${() => this.send('piece-pointed', key)}
      @pointerleave=${() => this.send('piece-pointed', '')}
      @focus=${() => this.onFocus(key)}
      @blur=${() => this.send('piece-pointed', '')}
      @click=${() => this.send('piece-kept', key)}
    >${drawn}</g>`;
  }

  private isMarked(key: string): boolean {
    return key !== '' && key === this.marked;
  }

  private onFocus(key: string): void {
    this.stop = key;
    this.send('piece-pointed', key);
  }

  private onKey(event: KeyboardEvent, pieces: readonly DrawnBox[]): void {
    const { currentTarget, target } = event;
    if (!(target instanceof SVGElement) || !(currentTarget instanceof SVGElement)) return;
    const key = target.dataset.key;
    const at = pieces.findIndex((piece) => piece.key === key);
    if (at < 0 || key === undefined) return;
    if (event.key === 'Enter' || event.key === ' ') this.send('piece-kept', key);
    else {
      const next = pieces[placeAfter(event.key, at, pieces.length, alongRow) ?? -1];
      if (next === undefined) return;
      currentTarget.querySelector<SVGElement>(`[data-key="${CSS.escape(next.key)}"]`)?.focus();
    }
    event.preventDefault();
  }

  private send(type: 'piece-pointed' | 'piece-kept', key: string): void {
    this.dispatchEvent(new CustomEvent<string>(type, { detail: key }));
  }
}

/** What can be pointed at in a day, from left to right over its lanes. */
function piecesOf({ lanes }: DrawnDay): readonly DrawnBox[] {
  return lanes
    .flatMap(({ boxes }) => boxes)
    .filter(({ key }) => key !== '')
    .sort((one, other) => one.x - other.x);
}

/** From the foot of a span to its text: straight down to words, over to a number that stands aside. */
function leader({ at, x, anchor, drop }: DrawnMark, foot: number): string {
  return anchor === 'start' ? `M${at} ${foot}V${foot + drop}H${at + 4}` : `M${at} ${foot}V${foot + 3}L${x} ${foot + 9}`;
}

declare global {
  interface HTMLElementTagNameMap {
    'strip-chart': StripChart;
  }
}
