import { type NamedCell, type NamedColumn, parseCellName, printCellName } from '../formula/cell-name.ts';
import { productTable } from '../formula/cells.ts';
import { parseFormula } from '../formula/parser.ts';
import type { Expression, Span } from '../formula/tree.ts';
import type { FormerNames } from './former-names.ts';
import type { ColumnFile, LineFile, RowCell, RowFile } from './line-schema.ts';
import type { SheetFault } from './sheet-fault.ts';
import type { Ask, SectionFile, SheetFile, TableFile } from './sheet-schema.ts';

/**
 * A sheet file with present names in place of former ones, in formulas, texts, `set`, rows, needs and questions; the rest of
 * each text stays as it is written. Every former name that is met is told in `notices`.
 */
export function withPresentNames(file: SheetFile, former: FormerNames, notices: SheetFault[]): SheetFile {
  const renamer = new Renamer(former, `${file.layer} ${file.id}`, notices);
  return {
    ...file,
    needs: file.needs.map((need) => ({ ...need, name: renamer.path(need.name) })),
    asks: file.asks.map((ask) => renamer.ask(ask)),
    sections: file.sections.map((section) => renamer.section(section)),
  };
}

class Renamer {
  private readonly former: FormerNames;
  private readonly where: string;
  private readonly notices: SheetFault[];

  constructor(former: FormerNames, where: string, notices: SheetFault[]) {
    this.former = former;
    this.where = where;
    this.notices = notices;
  }

  section(section: SectionFile): SectionFile {
    switch (section.kind) {
      case 'use':
        return { ...section, set: this.keyed(section.set, (name) => this.path(name)) };
      case 'rows':
        return { ...section, rows: section.rows.map((row) => this.row(row, section.rowsFor)) };
      case 'own':
        return {
          ...section,
          lines: section.lines.map(({ line, path }) => ({ line: this.line(line), path })),
          tables: section.tables.map((table) => this.table(table)),
        };
      default:
        return section satisfies never;
    }
  }

  ask(ask: Ask): Ask {
    const set = <V>(given: Readonly<Record<string, V>>): Record<string, V> =>
      this.keyed(given, (name) => this.path(name));
    const names = (given: string[]): string[] => given.map((name) => this.path(name));
    const asked = ask.when === undefined ? ask : { ...ask, when: this.formula(ask.when) };
    switch (asked.kind) {
      case 'sizes': {
        const choices = asked.choices.map(({ rows, ...choice }) => ({
          ...choice,
          rows: rows.map((row) => this.row(row, asked.table)),
          ...(choice.set && { set: set(choice.set) }),
          ...(choice.clears && { clears: names(choice.clears) }),
          ...(choice.keeps && { keeps: names(choice.keeps) }),
        }));
        return { ...asked, choices };
      }
      case 'oneOf':
        return { ...asked, choices: asked.choices.map((choice) => ({ ...choice, set: set(choice.set) })) };
      case 'toggle':
        return { ...asked, on: set(asked.on), off: set(asked.off) };
      case 'fields':
        return { ...asked, lines: names(asked.lines) };
      default:
        return asked satisfies never;
    }
  }

  /** A line, `table.column` or `table.row.column`. */
  path(path: string): string {
    const name = parseCellName(path);
    if (name === undefined) return path;
    if (name.kind === 'line') return this.present(name.line, this.former.lines);
    return printCellName(this.inTable(name));
  }

  private inTable<Name extends NamedColumn | NamedCell>(name: Name): Name {
    return { ...name, column: this.present(name.column, this.former.columns.get(name.table)) };
  }

  private line(line: LineFile): LineFile {
    switch (line.kind) {
      case 'formula':
        return { ...line, formula: this.formula(line.formula) };
      case 'check':
        return { ...line, check: this.formula(line.check), say: this.text(line.say) };
      case 'text':
        return {
          ...line,
          text: this.text(line.text),
          ...(line.when !== undefined && { when: this.formula(line.when) }),
        };
      default:
        return line;
    }
  }

  private table(table: TableFile): TableFile {
    return {
      ...table,
      gather: table.gather.map((name) => this.inTable(name)),
      columns: table.columns.map((column) => this.column(column, table.name)),
      newRow: this.row(table.newRow, table.name),
      start: table.start.map((row) => this.row(row, table.name)),
    };
  }

  private column(column: ColumnFile, table: string): ColumnFile {
    if (column.kind !== 'formula' && column.kind !== 'check') return column;
    const first = column.first === undefined ? {} : { first: this.formula(column.first, table) };
    return column.kind === 'formula'
      ? { ...column, ...first, formula: this.formula(column.formula, table) }
      : { ...column, ...first, check: this.formula(column.check, table), say: this.text(column.say, table) };
  }

  private row(row: RowFile, table: string): RowFile {
    const cell = (value: RowCell): RowCell =>
      typeof value === 'object' ? { formula: this.formula(value.formula, table) } : value;
    const cells = Object.fromEntries(Object.entries(row).map(([name, value]) => [name, cell(value)]));
    return this.keyed(cells, (name) => this.present(name, this.former.columns.get(table)));
  }

  private keyed<V>(record: Readonly<Record<string, V>>, name: (key: string) => string): Record<string, V> {
    return Object.fromEntries(Object.entries(record).map(([key, value]) => [name(key), value]));
  }

  private text(text: string, table?: string): string {
    return text.replace(/\{([^{}]*)\}/g, (_, hole: string) => `{${this.formula(hole, table)}}`);
  }

  /** Puts present names where former ones stand; what cannot be read is told when it is compiled. */
  private formula(text: string, table?: string): string {
    const parsed = parseFormula(text);
    if (parsed.kind === 'fault') return text;
    const changes = this.changes(parsed.tree, table).toSorted((a, b) => b.span.start - a.span.start);
    return changes.reduce((left, { span, name }) => left.slice(0, span.start) + name + left.slice(span.end), text);
  }

  private changes(tree: Expression, table: string | undefined): { readonly span: Span; readonly name: string }[] {
    switch (tree.kind) {
      case 'number':
      case 'text':
        return [];
      case 'unary':
        return this.changes(tree.operand, table);
      case 'binary':
        return [...this.changes(tree.left, table), ...this.changes(tree.right, table)];
      case 'call':
        return tree.args.flatMap((argument) => this.changes(argument, table));
      case 'name':
        return changed(tree.span, tree.name, this.name(tree.name, table));
      case 'allAbove': {
        const column = this.present(tree.column, this.former.columns.get(table ?? ''));
        return changed(tree.span, `above(${tree.column})`, `above(${column})`);
      }
      case 'member':
        return changed(tree.span, `${tree.of}.${tree.member}`, this.member(tree.of, tree.member, table));
      default:
        return tree satisfies never;
    }
  }

  /** A column of the formula's own table, or a line. */
  private name(name: string, table: string | undefined): string {
    const own = this.former.columns.get(table ?? '');
    return own?.has(name) ? this.present(name, own) : this.present(name, this.former.lines);
  }

  private member(of: string, member: string, table: string | undefined): string {
    const isTable = this.former.columns.has(of) && of !== productTable;
    const columns = this.former.columns.get(of === 'above' ? (table ?? '') : isTable ? of : productTable);
    const left = of === 'above' || isTable ? of : this.name(of, table);
    return `${left}.${this.present(member, columns)}`;
  }

  private present(name: string, names: ReadonlyMap<string, string> | undefined): string {
    const now = names?.get(name);
    if (now === undefined) return name;
    const notice = { path: this.where, reason: `“${name}” is called “${now}” now.` };
    if (!this.notices.some(({ path, reason }) => path === notice.path && reason === notice.reason))
      this.notices.push(notice);
    return now;
  }
}

function changed(span: Span, before: string, name: string): { readonly span: Span; readonly name: string }[] {
  return before === name ? [] : [{ span, name }];
}
