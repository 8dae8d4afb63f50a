import { describe, expect, it } from 'vitest';
import { readArguments } from '../../src/cli/arguments.ts';

const faults = (...words: string[]): readonly string[] => readArguments(words).faults;

describe('a command line', () => {
  it('gives its values apart or joined by =', () => {
    const apart = readArguments([
      '--system',
      'flake',
      '--set',
      'price=1',
      '--rows',
      'areas=[]',
      '--pricelist',
      'a.csv',
    ]);
    expect(readArguments(['--system=flake', '--set=price=1', '--rows=areas=[]', '--pricelist=a.csv'])).toEqual(apart);
    expect(apart.faults).toEqual([]);
    expect(apart.arguments.systems).toEqual(['flake']);
    expect([...apart.arguments.given.sets]).toEqual([['price', '1']]);
    expect([...apart.arguments.given.rows]).toEqual([['areas', []]]);
    expect(apart.arguments.priceList).toBe('a.csv');
    expect(apart.arguments.show).toEqual({ kind: 'tables' });
  });

  it('keeps what follows the first = of a value, and a value that begins with a minus', () => {
    const { arguments: read } = readArguments(['--set', 'a=b=c', '--set', 'crew_extra=-1']);
    expect([...read.given.sets]).toEqual([
      ['a', 'b=c'],
      ['crew_extra', '-1'],
    ]);
  });

  it('names the nearest option for one it does not know, and does not take its value for a stray word', () => {
    expect(faults('--sytem', 'flake')).toEqual(['There is no option --sytem. Did you mean --system?']);
    expect(faults('--verbosely')).toEqual(['There is no option --verbosely. --help lists them.']);
  });

  it('tells every fault at once', () => {
    expect(faults('flake', '--set', '--json', '--json', '--rows', 'areas', '--explain=')).toEqual([
      '“flake” stands alone: every value follows its option. --help shows how.',
      '--set wants a value: --set NAME=VALUE.',
      '--json is given twice: once is enough.',
      '--explain wants a value: --explain NAME.',
      '--rows areas: write --rows TABLE=JSON.',
    ]);
  });

  it('refuses a name that is given twice', () => {
    expect(faults('--set', 'price=1', '--set', 'price=2', '--rows', 'areas=[]', '--rows', 'areas=[]')).toEqual([
      '--rows areas: it is given twice.',
      '--set price: it is given twice.',
    ]);
  });

  it('refuses rows that are not JSON', () => {
    expect(faults('--rows', 'areas=[{]')[0]).toMatch(/^--rows areas: this is not JSON\. /);
  });

  it('prints one thing only', () => {
    expect(faults('--json', '--list')).toEqual(['--json and --list do not go together: choose one.']);
    expect(faults('--json', '--explain', 'price')).toEqual(['--json and --explain do not go together: choose one.']);
    expect(faults('--brief', '--json')).toEqual(['--json and --brief do not go together: choose one.']);
    expect(faults('--json=yes')).toEqual(['--json takes no value.']);
  });

  it('shows the help whatever else is asked', () => {
    expect(readArguments(['--help', '--json']).arguments.show).toEqual({ kind: 'help' });
  });
});
