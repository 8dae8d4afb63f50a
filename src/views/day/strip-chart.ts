import { html, LitElement, nothing, svg, type TemplateResult } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import { OwnWidth } from '../parts/own-width.ts';
import { sharedStyles } from '../parts/shared.styles.ts';
import { stripChartStyles } from './strip-chart.styles.ts';
import {
  type DrawnDay,
  type DrawnLane,
  drawStrip,
  laneHeight,
  type StripDay,
  type StripTick,
} from './strip-geometry.ts';

/**
 * Days as strips of hours: work, coats, waits and ways on one ruled axis. It is a picture only; the table beside it says
 * the same in words.
 */
@customElement('strip-chart')
export class StripChart extends LitElement {
  static override styles = [sharedStyles, stripChartStyles];

  @property({ attribute: false }) days: readonly StripDay[] = [];
  /** What the picture shows, for those who do not see it. */
  @property() words = '';

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
      ${days.map(
        (day) => html`<figure>
        <figcaption>${day.title}</figcaption>
        <svg
          role="img"
          aria-label=${this.words === '' ? day.title : `${day.title}: ${this.words}`}
          width=${width}
          height=${day.height}
          viewBox="0 0 ${width} ${day.height}"
        >
          ${this.ruled(day, ticks)} ${day.lanes.map((lane) => this.lane(lane))}
        </svg>
      </figure>`,
      )}`;
  }

  private ruled({ axis, height }: DrawnDay, ticks: readonly StripTick[]): TemplateResult[] {
    return ticks.map(
      ({ x, words }) => svg`<line class="tick" x1=${x} x2=${x} y1=${axis - 4} y2=${height}></line>
        ${words === '' ? nothing : svg`<text class="hour" x=${x} y=${axis - 10}>${words}</text>`}`,
    );
  }

  private lane({ name, top, boxes, marks }: DrawnLane): TemplateResult {
    return svg`<text class="name" x="2" y=${top - 7}>${name}</text>
      ${boxes.map(
        ({
          tone,
          x,
          width,
          words,
        }) => svg`<rect class=${tone} x=${x} y=${top} width=${Math.max(1, width - 1)} height=${laneHeight}></rect>
          ${words === '' ? nothing : svg`<text class="in ${tone}" x=${x + width / 2} y=${top + laneHeight / 2} dy="0.35em">${words}</text>`}`,
      )}
      ${marks.map(
        ({
          words,
          x,
          at,
        }) => svg`<path class="leader" d="M${at} ${top + laneHeight}V${top + laneHeight + 3}L${x} ${top + laneHeight + 9}"></path>
          <text class="mark" x=${x} y=${top + laneHeight + 17} dy="0.35em">${words}</text>`,
      )}`;
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'strip-chart': StripChart;
  }
}
