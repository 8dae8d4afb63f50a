import type { Page } from 'playwright-core';
import { type Picture, turnOwner, turnTo } from './picture.ts';

const sizes = [
  { width: 360, height: 740 },
  { width: 820, height: 1180 },
  { width: 1440, height: 900 },
] as const;

const themes = ['light', 'dark', 'sun'] as const;

const owners = (face: string) => async (page: Page) => {
  await turnOwner(page);
  await turnTo(page, face);
};

const faces: readonly { readonly face: string; readonly show: Picture['show'] }[] = [
  { face: 'quotes', show: async (page) => page.getByRole('link', { name: 'Spreadrate' }).click() },
  { face: 'price', show: async () => undefined },
  { face: 'price-owner', show: turnOwner },
  { face: 'side-by-side', show: async (page) => turnTo(page, 'Side by side') },
  { face: 'side-by-side-owner', show: owners('Side by side') },
  { face: 'costing', show: owners('Costing') },
  { face: 'day', show: owners('The day') },
];

/** Every face at every width in every theme, to be looked over after a change that shows. */
export const everyFace: readonly Picture[] = faces.flatMap(({ face, show }) =>
  sizes.flatMap(({ width, height }) =>
    themes.map((theme): Picture => ({ name: `${face}-${width}-${theme}`, width, height, theme, show })),
  ),
);
