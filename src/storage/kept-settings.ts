/** Small settings of this browser, such as the theme. A browser may refuse even to be asked: then nothing is kept. */
export function keptSetting(name: string): string | undefined {
  return settings()?.getItem(name) ?? undefined;
}

export function keepSetting(name: string, value: string): void {
  try {
    settings()?.setItem(name, value);
  } catch {
    // Full or forbidden: the setting lasts as long as the page.
  }
}

function settings(): Storage | undefined {
  try {
    return globalThis.localStorage;
  } catch {
    return undefined;
  }
}
