import { existsSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { placeText } from '../../src/formula/cell-name.ts';
import { closuresOf } from '../../src/formula/closures.ts';
import { typeWords } from '../../src/formula/value-type.ts';
import { compileStack } from '../../src/template/compile.ts';
import type { CompiledStack } from '../../src/template/compiled-stack.ts';
import { composeSheet } from '../../src/template/compose.ts';
import { isConstant } from '../../src/template/constant.ts';
import { noEntries } from '../../src/template/entries.ts';
import type { ColumnFile, LineFile, RowFile } from '../../src/template/line-schema.ts';
import { typeOfNeed } from '../../src/template/needs.ts';
import { planOption } from '../../src/template/plan.ts';
import { resultLines } from '../../src/template/result-lines.ts';
import type { Need, SheetFile } from '../../src/template/sheet-schema.ts';
import { stackOf } from '../../src/template/stack-of.ts';
import { bareNumbers } from '../helpers/bare-numbers.ts';
import { repository } from '../helpers/repository-files.ts';
import { shippedLibrary, shippedProducts, templatePaths } from '../helpers/shipped-templates.ts';

const { library, faults } = shippedLibrary();
const { parts } = library;
const priceLists = [...library.priceLists.values()];
const systems = [...library.systems.values()];
const sheets = [...priceLists, ...library.shops.values(), ...library.floors.values(), ...systems, ...parts.values()];

/** Every stack that can be made of shipped sheets. */
const stacks = priceLists.flatMap((priceList) =>
  [...library.shops.values()].flatMap((shop) =>
    [...library.floors.values()].flatMap((floor) => systems.map((system) => ({ priceList, shop, floor, system }))),
  ),
);
const named = stacks.map(
  (files) =>
    [
      Object.values(files)
        .map(({ id }) => id)
        .join(', '),
      files,
    ] as const,
);

interface Written {
  readonly where: string;
  readonly line: LineFile | ColumnFile;
}

function written(sheet: SheetFile): Written[] {
  return sheet.sections.flatMap((section) => {
    if (section.kind !== 'own') return [];
    const lines = section.lines.map(({ line }) => ({ where: `${sheet.id}: ${line.name}`, line }));
    const columns = section.tables.flatMap(({ name, columns: all }) =>
      all.map((line) => ({ where: `${sheet.id}: ${name}.${line.name}`, line })),
    );
    return [...lines, ...columns];
  });
}

function rowsOf(sheet: SheetFile): readonly RowFile[] {
  return sheet.sections.flatMap((section) => {
    if (section.kind === 'rows') return section.rows;
    return section.kind === 'own' ? section.tables.flatMap(({ start, newRow }) => [...start, newRow]) : [];
  });
}

/** Every formula of a sheet, those in rows and in the words of checks with them. */
function formulasOf(sheet: SheetFile): string[] {
  const ofLines = written(sheet).flatMap(({ line }) => {
    if (line.kind === 'formula') return [line.formula, ...('first' in line && line.first ? [line.first] : [])];
    if (line.kind !== 'check') return [];
    return [line.check, ...[...line.say.matchAll(/\{([^{}]*)\}/g)].flatMap(([, hole]) => hole ?? [])];
  });
  const ofRows = rowsOf(sheet).flatMap((row) =>
    Object.values(row).flatMap((cell) => (typeof cell === 'object' ? [cell.formula] : [])),
  );
  return [...ofLines, ...ofRows];
}

describe('the shipped templates', () => {
  it('are read, every file, and stand in the folder of their id', () => {
    expect(faults).toEqual([]);
    expect(sheets).toHaveLength(templatePaths.length);
    expect(systems.length).toBeGreaterThanOrEqual(2);
    expect(stacks.length).toBeGreaterThanOrEqual(2);
    const folders = { pricelist: 'pricelist', shop: 'shop', floor: 'floor', system: 'systems', part: 'parts' };
    const own = sheets.map(({ layer, id }) => `templates/${folders[layer]}/${id}/template.json`);
    expect([...own].sort()).toEqual([...templatePaths].sort());
  });

  it('have each a README', () => {
    const lacking = templatePaths.filter(
      (path) => !existsSync(`${repository}/${path.replace('template.json', 'README.md')}`),
    );
    expect(lacking).toEqual([]);
  });

  it('say of every entry and choice where its value comes from', () => {
    const asked = sheets.flatMap(written).filter(({ line }) => line.kind === 'entry' || line.kind === 'choice');
    expect(asked.length).toBeGreaterThan(100);
    expect(asked.filter(({ line }) => (line.source ?? '').trim() === '').map(({ where }) => where)).toEqual([]);
  });

  it('have low, likely and high in order, and each value within its limits', () => {
    const entries = sheets
      .flatMap(written)
      .flatMap(({ where, line }) => (line.kind === 'entry' ? [{ where, line }] : []));
    const disordered = entries.filter(({ line }) => {
      const standard = 'value' in line ? line.value : line.default;
      const value = typeof standard === 'number' ? standard : undefined;
      const [least, most] = line.limits ?? [];
      const inOrder = [least, line.low, line.likely ?? value, line.high, most].filter((each) => each !== undefined);
      return inOrder.some((each, at) => each > (inOrder[at + 1] ?? each));
    });
    expect(disordered.map(({ where }) => where)).toEqual([]);
  });
});

describe('bare numbers', () => {
  it.each(sheets.map((sheet) => [sheet.layer, sheet.id, sheet] as const))(
    'in the formulas of %s %s are 0, 1 and 2 only',
    (_, __, sheet) => {
      const bare = formulasOf(sheet).filter((formula) => bareNumbers(formula).length > 0);
      expect(bare).toEqual([]);
    },
  );

  it('are no entries: a line that may hold one number only is a constant, and says where it comes from', () => {
    const lines = sheets.flatMap(({ sections }) =>
      sections.flatMap((section) => (section.kind === 'own' ? section.lines.map(({ line }) => line) : [])),
    );
    const fixed = lines.filter((line) => line.kind === 'entry' && line.limits?.[0] === line.limits?.[1] && line.limits);
    expect(fixed.map(({ name }) => name)).toEqual([]);
    const constants = lines.filter(isConstant);
    expect(constants.map(({ name }) => name)).toEqual(expect.arrayContaining(['film_constant', 'grams_per_pound']));
    expect(constants.filter(({ source }) => source === undefined)).toEqual([]);
  });

  it('are looked for in many formulas', () => {
    expect(sheets.flatMap(formulasOf).length).toBeGreaterThan(200);
  });

  it.each([
    ['width * 12', [12]],
    ['IF(a = 3, 0, -5)', [3, 5]],
    ['ROUND(price / 25, 2) * 25', [25, 25]],
    ['INDEX(sets.rate, 3, 1)', [3]],
    ['ROUNDUP(area, -3) + MATCH(7, sets.rate, 0)', [7]],
    ['231 / 144 * 1000', []],
    ['1 - share * 2 + 0', []],
  ])('the rule finds in %s %j', (formula, wanted) => {
    expect(bareNumbers(formula)).toEqual(wanted);
  });
});

describe.each(priceLists.map((priceList) => [priceList.id, priceList] as const))(
  'the price list %s',
  (_, priceList) => {
    it('has its products read without faults', () => {
      const read = shippedProducts(priceList);
      expect(read.faults).toEqual([]);
      expect(read.products.size).toBeGreaterThanOrEqual(25);
    });

    it.each([...parts.values()].map((part) => [part.id, part] as const))(
      'lets the part %s compile alone',
      (__, part) => {
        const composed = [priceList, part].map((file) => composeSheet(file, parts));
        const compiled = compileStack(composed.map(({ sheet }) => sheet));
        expect([...composed.flatMap((each) => each.faults), ...compiled.faults]).toEqual([]);
        expect(compiled.stack.lines.size + compiled.stack.tables.size).toBeGreaterThan(0);
      },
    );
  },
);

describe.each(named)('%s', (_, files) => {
  const { stack, faults: compileFaults } = stackOf(files, parts);
  const products = shippedProducts(files.priceList).products;

  it('compiles: names, types and units agree', () => {
    expect(compileFaults).toEqual([]);
    expect(stack.lines.size).toBeGreaterThan(150);
  });

  it('is laid out without faults, and no number of it fails as the templates stand', () => {
    const { plan, graph, faults: planFaults } = planOption(stack, noEntries, products);
    expect(planFaults).toEqual([]);
    const values = closuresOf(plan, graph).values();
    const failed = values.flatMap((value, cell) =>
      typeof value === 'object' && value.origin === cell
        ? [`${placeText(plan.cells[cell]?.place)}: ${value.kind}`]
        : [],
    );
    expect(failed).toEqual([]);
    expect(values.length).toBeGreaterThan(500);
  });

  it('marks its result lines, all of them numbers of the system', () => {
    const marked = [...stack.lines.values()].filter(
      ({ definition }) => definition.kind === 'formula' && definition.result,
    );
    expect(marked.map(({ definition }) => definition.name).sort()).toEqual([...resultLines].sort());
    expect(marked.filter(({ layer, type }) => layer !== 'system' || type.kind !== 'number')).toEqual([]);
  });

  it('gives each part it uses what that part needs, in the unit it needs', () => {
    const used = files.system.sections.flatMap((section) =>
      section.kind === 'use' ? (parts.get(section.use) ?? []) : [],
    );
    const wrong = used.flatMap(({ id, needs }) =>
      needs.flatMap((need) => disagreement(need, stack)).map((why) => `${id}: ${why}`),
    );
    expect(used.length).toBeGreaterThan(0);
    expect(wrong).toEqual([]);
  });
});

function disagreement(need: Need, stack: CompiledStack): string[] {
  const [name = '', column] = need.name.split('.');
  const given =
    column === undefined
      ? stack.lines.get(name)?.type
      : stack.tables.get(name)?.columns.get(column)?.cases.values().next().value?.type;
  const [wanted, found] = [typeWords(typeOfNeed(need)), given === undefined ? 'nothing' : typeWords(given)];
  if (wanted !== found) return [`${need.name} is needed as ${wanted} and given as ${found}`];
  const [asked, codes] = [
    need.codes ?? need.accepts ?? [],
    given?.kind === 'code' ? (given.products ?? given.codes ?? []) : [],
  ];
  const lacking = codes.filter((code) => asked.length > 0 && !asked.includes(code));
  return lacking.length === 0 ? [] : [`${need.name} may be ${lacking.join(', ')}, which is not expected`];
}
