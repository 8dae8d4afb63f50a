import { QuoteWorkbooks } from './engine/quote-workbooks.ts';
import { readProducts } from './pricelist/read-products.ts';
import { makeQuote } from './quote/new-quote.ts';
import { QuoteStacks } from './quote/quote-stacks.ts';
import { pinSheets } from './quote/sheet-store.ts';
import { QuoteSession } from './session/quote-session.ts';
import { composeSheet } from './template/compose.ts';
import { productFieldsOf } from './template/product-fields.ts';
import { CostingFace } from './views/costing/costing-face.ts';
import './views/theme.css';

const templates = import.meta.glob<unknown>('../templates/*/*/template.json', { eager: true, import: 'default' });
const priceLists = import.meta.glob<string>('../templates/pricelist/*/products.csv', {
  eager: true,
  query: '?raw',
  import: 'default',
});

/** Puts the templates, the engine and the session together and shows the demo floor. */
async function start(): Promise<void> {
  const { store } = await pinSheets(new Map(Object.entries(templates)));
  const [priceListFile] = store.library.priceLists.values();
  const [csv = ''] = Object.values(priceLists);
  if (priceListFile === undefined) throw new Error('There is no price list.');
  const { kinds, fields } = productFieldsOf(composeSheet(priceListFile, new Map()).sheet, () => undefined);
  const { products } = readProducts(csv, [...fields.values()], kinds.keys());
  const made = makeQuote(
    {
      id: 'demo',
      title: 'Juniper Lane, two-car garage',
      shop: 'standard',
      floor: 'garage',
      systems: ['flake-full-broadcast', 'solid-colour'],
    },
    store,
    products,
  );
  if (made.kind === 'refused') throw new Error(made.faults.map((fault) => `${fault.path}: ${fault.reason}`).join('\n'));
  const stacks = new QuoteStacks(store);
  const workbooks = new QuoteWorkbooks((quote, option) => stacks.of(quote, option).stack);
  workbooks.load(made.quote);
  const face = new CostingFace();
  face.priceList = products;
  face.session = new QuoteSession(made.quote, workbooks);
  document.body.replaceChildren(face);
}

start().catch((error: unknown) => {
  const told = document.createElement('p');
  told.setAttribute('role', 'alert');
  told.textContent = `The sheet could not be opened. ${error instanceof Error ? error.message : ''}`;
  document.body.replaceChildren(told);
  throw error;
});
