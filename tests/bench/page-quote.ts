import type { Page } from 'playwright-core';

/** Options of the benched quote; the demo quote has two. */
export const benchedOptions = 4;

export const priceAddress = '#/quote/demo/price';

/** Opens the Price of the demo quote with four options: the two of the demo, and each again under another name. */
export async function openFourOptions(page: Page, address: string): Promise<void> {
  await page.goto(`${address}${priceAddress}`);
  await page.getByRole('region', { name: 'Full flake' }).waitFor();
  await page.evaluate(doubleStoredOptions);
  await page.reload();
  await page
    .getByRole('region', { name: /, again$/ })
    .first()
    .waitFor();
  const shown = await page.locator('price-face .prices > section').count();
  if (shown !== benchedOptions) throw new Error(`${shown} options are shown, not ${benchedOptions}`);
}

/** Runs in the page: the app itself offers each system once, so the stored quote is changed. */
async function doubleStoredOptions(): Promise<void> {
  interface Stored {
    readonly quote: { readonly options: readonly { readonly id: string; readonly title: string }[] };
  }
  await new Promise<void>((resolve, reject) => {
    const opening = indexedDB.open('spreadrate');
    opening.onerror = () => reject(opening.error);
    opening.onsuccess = () => {
      const writing = opening.result.transaction('heads', 'readwrite');
      const heads = writing.objectStore('heads');
      const reading = heads.get('demo');
      reading.onsuccess = () => {
        const head: Stored = reading.result;
        const again = head.quote.options.map((option) => ({
          ...option,
          id: `${option.id}_again`,
          title: `${option.title}, again`,
        }));
        heads.put({ ...head, quote: { ...head.quote, options: [...head.quote.options, ...again] } }, 'demo');
      };
      writing.oncomplete = () => {
        opening.result.close();
        resolve();
      };
      writing.onabort = () => reject(writing.error);
    };
  });
}

/** Turns the owner's view on, by holding the key. */
export async function turnOwner(page: Page): Promise<void> {
  await page.getByRole('button', { name: 'Adjust' }).dispatchEvent('pointerdown');
  await page.getByRole('button', { name: 'Customer’s view' }).waitFor();
}
