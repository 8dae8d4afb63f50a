import { keepSetting, keptSetting } from '../../storage/kept-settings.ts';

/** Light, dark, or black on white with heavy strokes for the sun; `system` follows the device. */
export const themes = [
  { theme: 'system', label: 'As the device' },
  { theme: 'light', label: 'Light' },
  { theme: 'dark', label: 'Dark' },
  { theme: 'sun', label: 'Sun' },
] as const;

export type Theme = (typeof themes)[number]['theme'];

export function readTheme(): Theme {
  const kept = keptSetting('theme');
  return themes.find(({ theme }) => theme === kept)?.theme ?? 'system';
}

export function showTheme(theme: Theme): void {
  document.documentElement.dataset.theme = theme;
  keepSetting('theme', theme);
}
