import { writeFileSync } from 'node:fs';
import { type Swept, sweptPrices } from '../helpers/price-sweep.ts';
import { repository } from '../helpers/repository-files.ts';
import { shippedStack, shippedSystems } from '../helpers/shipped-stacks.ts';
import { smallPlots } from './small-plots.ts';

const plots: readonly (readonly [swept: Swept, unit: string, file: string, title: string])[] = [
  ['floor', 'ft²', 'prices-by-floor.svg', 'Price of each system by the size of the floor'],
  ['cracks', 'ft of crack', 'prices-by-cracks.svg', 'Price of each system by the length of cracks'],
];

const titleOf = (system: string): string =>
  shippedStack(system).stack.sheets.find(({ layer }) => layer === 'system')?.title ?? system;

for (const [swept, across, file, title] of plots) {
  const curves = shippedSystems.map((system) => ({
    name: titleOf(system),
    points: sweptPrices(system, swept).map(({ at, price }) => [at, price] as const),
  }));
  writeFileSync(`${repository}/docs/pictures/${file}`, smallPlots(curves, { title, across, up: '$' }));
  console.log(`docs/pictures/${file} is written.`);
}
