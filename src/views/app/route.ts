/** Where the app is: the list of quotes, or a face of one quote. In the address behind `#`, so that no server sees it. */
export type Route = { readonly kind: 'start' } | { readonly kind: 'quote'; readonly id: string; readonly face: Face };

export const faces = ['price', 'side-by-side', 'costing'] as const;
export type Face = (typeof faces)[number];

export function readRoute(hash: string): Route {
  const [, place, id, face] = hash.replace(/^#/, '').split('/');
  if (place !== 'quote' || id === undefined || id === '') return { kind: 'start' };
  return { kind: 'quote', id: decodeURIComponent(id), face: faces.find((known) => known === face) ?? 'price' };
}

export function writeRoute(route: Route): string {
  return route.kind === 'start' ? '#/' : `#/quote/${encodeURIComponent(route.id)}/${route.face}`;
}
