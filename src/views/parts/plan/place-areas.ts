import type { OutlineCorner } from '../../../trade/crossing-sides.ts';

/** Where everything stands on the sheet: one scale for all areas. */
export interface PlanPlacement {
  /** Pixels a foot. */
  readonly scale: number;
  readonly width: number;
  readonly height: number;
  /** By area row, where its 0, 0 is; up the sheet is further along. */
  readonly origins: ReadonlyMap<string, { readonly x: number; readonly y: number }>;
}

export interface PlacedOutline {
  readonly row: string;
  readonly places: readonly OutlineCorner[];
  /** Whether its corners are measured from a point that other areas may share. */
  readonly byCorners: boolean;
}

export interface SheetSize {
  readonly width: number;
  /** Of one area or a few; many take more. */
  readonly mostHeight: number;
}

interface Extent {
  readonly left: number;
  readonly right: number;
  readonly bottom: number;
  readonly top: number;
}

interface Block {
  readonly rows: readonly string[];
  readonly extent: Extent;
}

/** Room about every block for lengths and for a thumb at its corners, and below for the scale bar. */
const margin = 30;
export const barRoom = 34;
/** Room for a name below a block too small to hold it. */
export const smallBlock = 84;
const nameRoom = 48;
const leastWidth = 104;
/** A closet fills no sheet. */
const largestScale = 36;
/** What the longest side should have before the sheet grows, and by how much it grows in all. */
const readableSide = 120;
const mostGrowth = 6;

/** Lays areas side by side, in as many shelves as give the largest scale. */
export function placeAreas(outlines: readonly PlacedOutline[], size: SheetSize): PlanPlacement {
  const blocks = blocksOf(outlines);
  const arrangements = blocks.map((_, at) => shelvesOf(blocks, at + 1));
  const longest = Math.max(...blocks.map(({ extent }) => Math.max(wide(extent), tall(extent))));
  let best: { readonly shelves: readonly Block[][]; readonly scale: number } | undefined;
  for (let growth = 1; growth < mostGrowth; growth *= 1.25) {
    const sheet = { ...size, mostHeight: size.mostHeight * growth };
    [best] = arrangements
      .map((shelves) => ({ shelves, scale: largestFit(shelves, sheet) }))
      .sort((a, b) => b.scale - a.scale);
    if ((best?.scale ?? 0) * longest >= Math.min(readableSide, size.width / 3)) break;
  }
  if (best === undefined) return { scale: 1, width: size.width, height: 0, origins: new Map() };
  return placed(best.shelves, best.scale, size.width);
}

/** Areas by their corners keep their places to each other where they do not lie on each other; all others stand alone. */
function blocksOf(outlines: readonly PlacedOutline[]): Block[] {
  const alone = outlines.map(({ row, places }): Block => ({ rows: [row], extent: extentOf(places) }));
  const shared = alone.filter((_, at) => outlines[at]?.byCorners);
  const apart = shared.every((one, at) => shared.slice(at + 1).every((two) => !overlap(one.extent, two.extent)));
  const [first] = shared;
  if (first === undefined || shared.length < 2 || !apart) return alone;
  const together: Block = {
    rows: shared.flatMap(({ rows }) => rows),
    extent: shared.map(({ extent }) => extent).reduce(around),
  };
  return alone.flatMap((block) => (block === first ? [together] : shared.includes(block) ? [] : [block]));
}

function shelvesOf(blocks: readonly Block[], perShelf: number): Block[][] {
  const shelves = Math.ceil(blocks.length / perShelf);
  return Array.from({ length: shelves }, (_, at) => blocks.slice(at * perShelf, (at + 1) * perShelf));
}

/** By halving: names below small blocks make the room they need depend on the scale. */
function largestFit(shelves: readonly Block[][], size: SheetSize): number {
  let [least, most] = [0, largestScale];
  for (let step = 0; step < 30; step += 1) {
    const scale = (least + most) / 2;
    const width = Math.max(...shelves.map((shelf) => shelfWidth(shelf, scale)));
    const height = shelves.reduce((sum, shelf) => sum + shelfHeight(shelf, scale), barRoom);
    if (width <= size.width && height <= size.mostHeight) least = scale;
    else most = scale;
  }
  return least;
}

function placed(shelves: readonly Block[][], scale: number, width: number): PlanPlacement {
  const origins = new Map<string, { x: number; y: number }>();
  let top = 0;
  for (const shelf of shelves) {
    let left = (width - shelfWidth(shelf, scale)) / 2;
    for (const block of shelf) {
      const room = blockWidth(block, scale);
      const { extent } = block;
      const x = left + (room - wide(extent) * scale) / 2 - extent.left * scale;
      const y = top + margin + extent.top * scale;
      for (const row of block.rows) origins.set(row, { x, y });
      left += room;
    }
    top += shelfHeight(shelf, scale);
  }
  return { scale, width, height: top + barRoom, origins };
}

function shelfWidth(shelf: readonly Block[], scale: number): number {
  return shelf.reduce((sum, block) => sum + blockWidth(block, scale), 0);
}

function shelfHeight(shelf: readonly Block[], scale: number): number {
  return Math.max(...shelf.map((block) => blockHeight(block, scale)));
}

function blockWidth({ extent }: Block, scale: number): number {
  return Math.max(wide(extent) * scale + 2 * margin, leastWidth);
}

function blockHeight({ extent }: Block, scale: number): number {
  const isSmall = Math.min(wide(extent), tall(extent)) * scale < smallBlock;
  return tall(extent) * scale + 2 * margin + (isSmall ? nameRoom : 0);
}

function wide({ left, right }: Extent): number {
  return right - left;
}

function tall({ bottom, top }: Extent): number {
  return top - bottom;
}

export function extentOf(places: readonly OutlineCorner[]): Extent {
  const across = places.map((place) => place.across);
  const along = places.map((place) => place.along);
  return {
    left: Math.min(...across),
    right: Math.max(...across),
    bottom: Math.min(...along),
    top: Math.max(...along),
  };
}

function around(a: Extent, b: Extent): Extent {
  return {
    left: Math.min(a.left, b.left),
    right: Math.max(a.right, b.right),
    bottom: Math.min(a.bottom, b.bottom),
    top: Math.max(a.top, b.top),
  };
}

/** Areas that only share a wall do not. */
function overlap(a: Extent, b: Extent): boolean {
  return a.left < b.right && b.left < a.right && a.bottom < b.top && b.bottom < a.top;
}
