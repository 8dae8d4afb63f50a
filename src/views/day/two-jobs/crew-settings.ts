import { keepSetting, keptSetting } from '../../../storage/kept-settings.ts';
import { usualSlack } from '../../../trade/stack-jobs.ts';

/** What two jobs on one day are judged by. It belongs to the firm's day, so it is kept in this browser and in no quote. */
export interface CrewSettings {
  /** Hours between the two sites. */
  readonly travel: number;
  readonly grinders: number;
  /** Hours from the start at the shop to the end there. */
  readonly shift: number;
  /** Hours that everything may run late. */
  readonly slack: number;
}

export type CrewSetting = keyof CrewSettings;

/** Travel and shift are common practice, no source: neighbouring floors, and a day of 9 h that may run 4 h longer. */
export const usualSettings: CrewSettings = { travel: 0.25, grinders: 1, shift: 13, slack: usualSlack };

const settingLimits: Readonly<Record<CrewSetting, readonly [number, number]>> = {
  travel: [0, 8],
  grinders: [0, 4],
  shift: [1, 24],
  slack: [0, 8],
};

const settingNames = ['travel', 'grinders', 'shift', 'slack'] as const satisfies readonly CrewSetting[];
const keptAs = 'two jobs a day';

/** What was entered last in this browser; what is missing or unlikely there is as usual. */
export function readCrewSettings(): CrewSettings {
  const kept = readKept(keptSetting(keptAs));
  const settings = { ...usualSettings };
  for (const name of settingNames) {
    const value = kept[name];
    if (typeof value === 'number' && settingFault(name, value) === undefined) settings[name] = value;
  }
  return settings;
}

export function keepCrewSettings(settings: CrewSettings): void {
  keepSetting(keptAs, JSON.stringify(settings));
}

/** Why a value may not stand; undefined for one that may. */
export function settingFault(name: CrewSetting, value: number): string | undefined {
  const [least, most] = settingLimits[name];
  if (!(value >= least && value <= most)) return `It must lie between ${least} and ${most}.`;
  return name === 'grinders' && !Number.isInteger(value) ? 'It must be a whole number.' : undefined;
}

function readKept(text: string | undefined): Readonly<Partial<Record<string, unknown>>> {
  try {
    const read: unknown = JSON.parse(text ?? '{}');
    return typeof read === 'object' && read !== null ? { ...read } : {};
  } catch {
    // Written by something else: the usual values stand.
    return {};
  }
}
