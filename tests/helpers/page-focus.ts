/**
 * Makes focus behave as in the page in front. Several test pages run at once, and a browser gives those behind no focus
 * events; here a call of `focus()` sends them itself. Gives the function that takes it back.
 */
export function withPageInFront(): () => void {
  const focus = HTMLElement.prototype.focus;
  const isInFront = document.hasFocus.bind(document);
  HTMLElement.prototype.focus = function (this: HTMLElement, options?: FocusOptions): void {
    const before = deepestActive();
    focus.call(this, options);
    const after = deepestActive();
    if (!isInFront() && before !== after) sendFocusEvents(before, after);
  };
  document.hasFocus = () => true;
  return () => {
    HTMLElement.prototype.focus = focus;
    document.hasFocus = isInFront;
  };
}

function deepestActive(): Element | null {
  let active = document.activeElement;
  while (active?.shadowRoot?.activeElement) active = active.shadowRoot.activeElement;
  return active === document.body ? null : active;
}

function sendFocusEvents(from: Element | null, to: Element | null): void {
  from?.dispatchEvent(new FocusEvent('blur', { relatedTarget: to, composed: true }));
  from?.dispatchEvent(new FocusEvent('focusout', { relatedTarget: to, composed: true, bubbles: true }));
  to?.dispatchEvent(new FocusEvent('focus', { relatedTarget: from, composed: true }));
  to?.dispatchEvent(new FocusEvent('focusin', { relatedTarget: from, composed: true, bubbles: true }));
}
