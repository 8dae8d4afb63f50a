/**
 * Views made before, by name. Where one would be made from the same as before, the same object is given again: elements
 * that show it have nothing to draw.
 */
export class KeptViews<View> {
  private readonly kept = new Map<string, { readonly from: readonly unknown[]; readonly view: View }>();

  /** The view of this name; made anew only when any of what it is made `from` is another than before. */
  view(name: string, from: readonly unknown[], make: () => View): View {
    const before = this.kept.get(name);
    if (before !== undefined && sameParts(before.from, from)) return before.view;
    const view = make();
    this.kept.set(name, { from, view });
    return view;
  }

  /** The view last made under this name. */
  last(name: string): View | undefined {
    return this.kept.get(name)?.view;
  }
}

function sameParts(before: readonly unknown[], now: readonly unknown[]): boolean {
  return before.length === now.length && before.every((part, at) => Object.is(part, now[at]));
}
