/** Words for those who listen: they go up to the page’s one status region. */
export interface ToldEvents {
  told: CustomEvent<string>;
}

declare global {
  interface HTMLElementEventMap extends ToldEvents {}
}

/** Has whole sentences said once things rest; to be called after the change they are about. */
export function tell(from: EventTarget, words: string): void {
  from.dispatchEvent(new CustomEvent('told', { detail: words, bubbles: true, composed: true }));
}
