import { describe, expect, it } from 'vitest';
import { priceCommand } from '../../src/cli/price-command.ts';
import { keptMeans } from './kept-means.ts';

const flake = ['--system', 'flake-full-broadcast'];

function faultsOf(...words: string[]): readonly string[] {
  const result = priceCommand(words, '2026-03-09', keptMeans);
  if (result.kind !== 'faults') throw new Error(`Nothing was wrong with ${words.join(' ')}`);
  return result.faults;
}

describe('mistakes of all sorts come in one go', () => {
  const tooMuch = '--set target_margin=2: “target_margin” must lie between 0 and 95 %; 200 % does not.';

  it('a wrong option, a misspelt system, a missing file, a misspelt name, rows and values', () => {
    const words = ['--system', 'flake-ful-broadcast', '--jsn', '--set', 'labor_rate=40', '--set', 'target_margin=2'];
    expect(faultsOf(...words, '--pricelist', 'none.csv', '--rows', 'areas=[3]')).toEqual([
      'There is no option --jsn. Did you mean --json?',
      'There is no system “flake-ful-broadcast”. Did you mean “flake-full-broadcast”?',
      'There is no file “none.csv”.',
      '--rows areas: Row 1 is no object: write { "column": value, … }.',
      '--set labor_rate=40: There is nothing called “labor_rate”. Did you mean “labour_rate”?',
      tooMuch,
    ]);
  });

  it('a constant that is set', () => {
    expect(faultsOf(...flake, '--set', 'grams_per_pound=450')).toEqual([
      '--set grams_per_pound=450: “grams_per_pound” is a constant: nothing is entered over it.',
    ]);
  });

  it('a value, where no system is named', () => {
    const faults = faultsOf('--set', 'target_margin=2');
    expect(faults).toHaveLength(2);
    expect(faults[0]).toMatch(/^Name a system: /);
    expect(faults[1]).toBe(tooMuch);
  });

  it('a name to explain that is not there, with a value that is refused', () => {
    expect(faultsOf(...flake, '--set', 'target_margin=2', '--explain', 'prize')).toEqual([
      tooMuch,
      '--explain prize: There is nothing called “prize”. Did you mean “price”?',
    ]);
  });

  it('a value that is refused, with too few rows of another table', () => {
    expect(faultsOf(...flake, '--set', 'target_margin=2', '--rows', 'areas=[]')).toEqual([
      tooMuch,
      'areas: “areas” has at least 1 row.',
    ]);
  });
});

describe('what cannot be judged is not called wrong', () => {
  it('a name that may stand in the system whose file is missing', () => {
    const words = ['--system', 'mine.json', '--set', 'steps_of_my_own=3', '--explain', 'steps_of_my_own'];
    expect(faultsOf(...words)).toEqual(['There is no file “mine.json”.']);
  });

  it('the code of a product, a row of what is bought, while the price list is missing', () => {
    const words = ['--pricelist', 'mine.csv', '--set', 'coats.base.product=my_base'];
    const rows = '[{"coat":"clear","product":"my_clear"}]';
    expect(faultsOf(...flake, ...words)).toEqual(['There is no file “mine.csv”.']);
    expect(faultsOf(...flake, '--pricelist', 'mine.csv', '--rows', `coats=${rows}`)).toEqual([
      'There is no file “mine.csv”.',
    ]);
  });

  it('a row to explain, while the rows of its table are refused', () => {
    const words = ['--rows', 'areas=[{"place":"Shed","lenght":3}]', '--explain', 'areas.shed.length'];
    const faults = faultsOf(...flake, ...words);
    expect(faults.length).toBeGreaterThan(0);
    expect(faults.filter((fault) => fault.startsWith('--explain'))).toEqual([]);
  });
});

describe('a price that is printed', () => {
  const forSale = (...words: string[]): boolean => {
    const result = priceCommand(words, '2026-03-09', keptMeans);
    if (result.kind === 'faults') throw new Error(result.faults.join('\n'));
    return result.forSale;
  };

  it('is for sale as the templates stand, cautions and notes or not', () => {
    expect(forSale(...flake)).toBe(true);
    expect(forSale(...flake, '--json')).toBe(true);
  });

  it('is not while a check stops it, as on a slab of 30 °F', () => {
    const cold = ['--set', 'slab_temperature=30'];
    expect(forSale(...flake, ...cold)).toBe(false);
    expect(forSale(...flake, ...cold, '--json')).toBe(false);
  });

  it('is not while one of the systems is stopped: on a slab of 58 °F the metallic, not the flake', () => {
    const cool = ['--set', 'slab_temperature=58'];
    expect(forSale(...flake, ...cool)).toBe(true);
    expect(forSale(...flake, '--system', 'metallic', ...cool)).toBe(false);
  });

  it('is not while it cannot be worked out: net 95 % of the price, with commission to pay from it', () => {
    expect(forSale(...flake, '--set', 'target_on=net', '--set', 'target_margin=0.95')).toBe(false);
  });

  it('is no matter where none is printed: an explanation, the lists, the help', () => {
    expect(forSale(...flake, '--set', 'slab_temperature=30', '--explain', 'price')).toBe(true);
    expect(forSale(...flake, '--set', 'slab_temperature=30', '--list')).toBe(true);
    expect(forSale('--list')).toBe(true);
    expect(forSale('--help')).toBe(true);
  });
});
