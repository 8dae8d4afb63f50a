/** Where the app is: the list of quotes, or a face of one quote. In the address behind `#`, so that no server sees it. */
export type Route = { readonly kind: 'start' } | { readonly kind: 'quote'; readonly id: string; readonly face: Face };

export const faces = ['price', 'side-by-side', 'costing', 'day'] as const;
export type Face = (typeof faces)[number];

export const faceTitles: Readonly<Record<Face, string>> = {
  price: 'Price',
  'side-by-side': 'Side by side',
  costing: 'Costing',
  day: 'The day',
};

/** Faces that a customer may not see. */
export function isOwners(face: Face): boolean {
  return face === 'costing' || face === 'day';
}

/** The face a thumb goes to next. */
export function besideFace(face: Face): Face {
  return face === 'side-by-side' ? 'price' : 'side-by-side';
}

export function readRoute(hash: string): Route {
  const [, place, id, face] = hash.replace(/^#/, '').split('/');
  if (place !== 'quote' || id === undefined || id === '') return { kind: 'start' };
  const name = decoded(id);
  if (name === undefined) return { kind: 'start' };
  return { kind: 'quote', id: name, face: faces.find((known) => known === face) ?? 'price' };
}

/** Undefined for what no address holds: a % that encodes nothing. */
function decoded(text: string): string | undefined {
  try {
    return decodeURIComponent(text);
  } catch {
    return undefined;
  }
}

export function writeRoute(route: Route): string {
  return route.kind === 'start' ? '#/' : `#/quote/${encodeURIComponent(route.id)}/${route.face}`;
}
