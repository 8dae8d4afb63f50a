import { type CSSResult, unsafeCSS } from 'lit';

/**
 * Has the browser lay out what `selector` names only while it is in view, once its height is known; for a host with
 * `Settled`. Not written with `css`, since the linter of styles knows neither property.
 */
export function whileInView(selector: string): CSSResult {
  return unsafeCSS(`
    ${selector} { contain-intrinsic-size: auto 20rem; }
    :host([settled]) ${selector} { content-visibility: auto; }
  `);
}
