/**
 * Puts the focus on the link of the face that is open, else on the first: turning to the owner's side and back takes the
 * button away that was pressed. A key still held down does no harm on a link; on the button beside it, it would press it.
 */
export function focusFace(root: ParentNode): void {
  const link = root.querySelector('nav a[aria-current="page"]') ?? root.querySelector('nav a');
  if (link instanceof HTMLElement) link.focus();
}
