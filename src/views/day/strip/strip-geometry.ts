import { type ClockHour, clockHour, hours, later, timeOfDayText } from '../../../units/hours.ts';
import { type DrawnMark, hasRoomForWords, letterWidth, marksUnder, type NarrowSpan } from './strip-labels.ts';

/** A day as lanes of spans over one axis of hours. */
export interface StripDay {
  readonly title: string;
  /** Hours from midnight of the first day to midnight of this one. */
  readonly midnight: ClockHour;
  readonly lanes: readonly StripLane[];
}

export interface StripLane {
  readonly name: string;
  readonly spans: readonly StripSpan[];
}

export interface StripSpan {
  readonly tone: StripTone;
  readonly from: ClockHour;
  readonly to: ClockHour;
  /** What is written in it where there is room. */
  readonly words: string;
  /** Its number in the table, written beside it where there is no room for words. */
  readonly mark?: string;
  /** What it has in common with its row of the table. */
  readonly key?: string;
  /** All of it, for those who do not see it. */
  readonly said?: string;
}

/** `coat` is resin, `work` plain; `wait` is hatched; `light` is paid and no work: driving, loading, standing. */
export type StripTone = 'coat' | 'work' | 'wait' | 'light';

/** A strip laid out in pixels. */
export interface StripDrawing {
  readonly width: number;
  readonly ticks: readonly StripTick[];
  readonly days: readonly DrawnDay[];
}

export interface StripTick {
  readonly x: number;
  /** `7 am`; empty where a label would run into the next, or out of the strip. */
  readonly words: string;
}

export interface DrawnDay {
  readonly title: string;
  readonly height: number;
  readonly axis: number;
  readonly lanes: readonly DrawnLane[];
}

export interface DrawnLane {
  readonly name: string;
  readonly top: number;
  readonly boxes: readonly DrawnBox[];
  readonly marks: readonly DrawnMark[];
}

export interface DrawnBox {
  readonly tone: StripTone;
  readonly x: number;
  readonly width: number;
  /** Empty where they do not fit. */
  readonly words: string;
  /** Empty where no table has a row of it. */
  readonly key: string;
  readonly said: string;
}

export const laneHeight = 34;
const nameHeight = 20;
/** Under the last text below a lane, and under a lane without any. */
const footRoom = { texts: 9, none: 8 } as const;
const axisHeight = 24;
const margin = 20;
/** For the longest hour in words, `midnight`, beside another. */
const tickRoom = 46;
/** Sums of hours come near a full hour, not always onto it. */
const noTime = 1e-6;
const steps = [1, 2, 3, 4, 6, 12, 24];

/**
 * Lays days out on one axis, from the full hour before the first span to the full hour after the last. Every label is
 * 13 px high; what has no room is told under its span.
 */
export function drawStrip(days: readonly StripDay[], width: number): StripDrawing {
  const spans = days.flatMap(({ midnight, lanes }) =>
    lanes.flatMap((lane) => lane.spans.map(({ from, to }) => [from - midnight, to - midnight] as const)),
  );
  const first = Math.floor(Math.min(24, ...spans.map(([from]) => from)) + noTime);
  const last = Math.max(first + 1, Math.ceil(Math.max(0, ...spans.map(([, to]) => to)) - noTime));
  const scale = (width - 2 * margin) / (last - first);
  const x = (hour: number): number => margin + (hour - first) * scale;
  return {
    width,
    ticks: ticksOf(first, last, scale, x).map((tick) => withinStrip(tick, width)),
    days: days.map((day) => drawnDay(day, (time) => x(time - day.midnight), width)),
  };
}

function ticksOf(first: number, last: number, scale: number, x: (hour: number) => number): StripTick[] {
  const step = steps.find((each) => each * scale >= tickRoom) ?? 24;
  return Array.from({ length: last - first + 1 }, (_, at) => {
    const hour = first + at;
    return { x: x(hour), words: at % step === 0 ? timeOfDayText(clockHour(hour)) : '' };
  });
}

/** A label that would be cut at an end of the strip is left out: its neighbours tell the hour. */
function withinStrip(tick: StripTick, width: number): StripTick {
  const half = (tick.words.length * letterWidth) / 2;
  return tick.x - half < 0 || tick.x + half > width ? { ...tick, words: '' } : tick;
}

function drawnDay({ title, lanes }: StripDay, x: (time: ClockHour) => number, width: number): DrawnDay {
  let top = axisHeight;
  const drawn = lanes.map(({ name, spans }): DrawnLane => {
    const boxes = spans.map((span) => boxOf(span, x));
    const marks = marksUnder(narrowSpans(spans, boxes, width), width);
    const lane = { name, top: top + nameHeight, boxes, marks };
    const foot = marks.length === 0 ? footRoom.none : Math.max(...marks.map(({ drop }) => drop)) + footRoom.texts;
    top += nameHeight + laneHeight + foot;
    return lane;
  });
  return { title, height: top, axis: axisHeight, lanes: drawn };
}

/** What is not told in its own box; a number in it is enough where no words have room below. */
function narrowSpans(spans: readonly StripSpan[], boxes: readonly DrawnBox[], width: number): NarrowSpan[] {
  return spans.flatMap(({ mark = '', words, key = '' }, at) => {
    const box = boxes[at];
    const isTold = box?.words !== '' && (box?.words !== mark || !hasRoomForWords(width));
    if (box === undefined || isTold) return [];
    return [{ mark, words, key, middle: box.x + box.width / 2 }];
  });
}

function boxOf(
  { tone, from, to, words, mark, key = '', said = '' }: StripSpan,
  x: (time: ClockHour) => number,
): DrawnBox {
  const [left, right] = [x(from), x(to)];
  const width = Math.max(1, right - left);
  const fitting = [mark === undefined ? words : `${mark} ${words}`, mark ?? ''].find(
    (text) => text !== '' && text.length * letterWidth + 8 <= width,
  );
  return { tone, x: left, width, words: fitting ?? '', key, said };
}

/** Midnight before a day, 1 for the first. */
export function midnightBefore(day: number): ClockHour {
  return later(clockHour(0), hours((day - 1) * 24));
}
