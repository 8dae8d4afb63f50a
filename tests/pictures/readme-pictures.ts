import { boardCell } from '../helpers/board-cell.ts';
import { type Picture, turnOwner, turnTo } from './picture.ts';

/** What the README shows. */
export const readmePictures: readonly Picture[] = [
  { name: 'price-phone', width: 360, height: 740, theme: 'light', show: async () => undefined },
  { name: 'price', width: 1440, height: 900, theme: 'light', show: async () => undefined },
  {
    name: 'side-by-side',
    width: 1440,
    height: 1000,
    theme: 'light',
    show: async (page) => {
      await turnOwner(page);
      await turnTo(page, 'Side by side');
    },
  },
  {
    name: 'costing',
    width: 1440,
    height: 900,
    theme: 'dark',
    show: async (page) => {
      await turnOwner(page);
      await turnTo(page, 'Costing');
      await (await boardCell(page, 'Price', 'Full flake')).click();
    },
  },
];
