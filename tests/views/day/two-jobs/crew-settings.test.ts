import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';
import {
  keepCrewSettings,
  readCrewSettings,
  settingFault,
  usualSettings,
} from '../../../../src/views/day/two-jobs/crew-settings.ts';

let kept: Map<string, string>;

beforeEach(() => {
  kept = new Map();
  vi.stubGlobal('localStorage', {
    getItem: (name: string) => kept.get(name) ?? null,
    setItem: (name: string, value: string) => kept.set(name, value),
  });
});

afterEach(() => vi.unstubAllGlobals());

describe('what two jobs on a day are judged by', () => {
  it('is at first a drive of a quarter of an hour, one grinder, 13 h and one hour to spare', () => {
    expect(readCrewSettings()).toEqual({ travel: 0.25, grinders: 1, shift: 13, slack: 1 });
  });

  it('is kept in the browser and comes back', () => {
    keepCrewSettings({ travel: 0.25, grinders: 2, shift: 11, slack: 0 });
    expect(readCrewSettings()).toEqual({ travel: 0.25, grinders: 2, shift: 11, slack: 0 });
  });

  it.each(['', '{', 'null', '"text"', '[1]', '{"travel":-1,"grinders":1.5,"shift":"12","slack":99}'])(
    'is as usual where %s is kept',
    (text) => {
      keepCrewSettings(usualSettings);
      const [name = ''] = kept.keys();
      kept.set(name, text);
      expect(readCrewSettings()).toEqual(usualSettings);
    },
  );

  it('takes no half grinder and no drive of 9 h', () => {
    expect(settingFault('grinders', 1.5)).toBe('It must be a whole number.');
    expect(settingFault('travel', 9)).toBe('It must lie between 0 and 8.');
    expect(settingFault('travel', Number.NaN)).toBe('It must lie between 0 and 8.');
    expect(settingFault('grinders', 2)).toBeUndefined();
  });
});
