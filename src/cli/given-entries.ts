import { type NamedCell, parseCellName } from '../formula/cell-name.ts';
import { productTable } from '../formula/cells.ts';
import { whyNotTyped } from '../quote/entry-text.ts';
import { rowPlace } from '../quote/named-cell.ts';
import type { CompiledColumn, CompiledStack, CompiledTable } from '../template/compiled-stack.ts';
import type { GivenValue, ProductRow, StackEntries } from '../template/entries.ts';
import type { RowFile } from '../template/line-schema.ts';
import { withStandingChoices } from '../template/standing-choices.ts';
import { nearestWord } from '../units/nearest-word.ts';
import { withBroughtRows } from './brought-rows.ts';
import { type CliContext, readGivenRows, readGivenText, rowsNamed, typeInRow } from './given-rows.ts';
import { messages } from './messages.ts';

/** What is given over the templates. */
export interface Given {
  /** Table → its rows as JSON has them; undefined for what is refused already. */
  readonly rows: ReadonlyMap<string, unknown>;
  /** Line, or `TABLE.ROW.COLUMN` → what is typed. */
  readonly sets: ReadonlyMap<string, string>;
}

export interface GivenStack {
  /** With the rows that are given in place of its own. */
  readonly stack: CompiledStack;
  readonly entries: StackEntries;
}

export interface GivenResult {
  readonly stacks: readonly GivenStack[];
  readonly faults: readonly string[];
}

/** What a value is read against, as far as it is at hand. */
export interface GivenContext {
  /** Undefined when the price list could not be read: then the code of a product is taken as it is. */
  readonly products: ReadonlyMap<string, ProductRow> | undefined;
  /** Whether every sheet is there. If not, a name that none of them has may stand in the one that is missing. */
  readonly everySheet: boolean;
}

/**
 * Gives every stack what it has of the names; rows first, so that cells may be named in them. A name that no stack has
 * is a fault, and so is one that any stack refuses.
 */
export function giveEntries(
  stacks: readonly CompiledStack[],
  given: Given,
  { products, everySheet }: GivenContext,
): GivenResult {
  const faults: string[] = [];
  const context: CliContext = {
    products: products ?? new Map(),
    typed: { shareAs: 'fraction' },
    productsKnown: products !== undefined,
  };
  const givers = stacks.map((stack) => new EntryGiver(stack, context));
  const tell = (place: string, answers: readonly Answer[]): void => {
    for (const reason of refusalsIn(answers, everySheet)) faults.push(`${place}: ${reason}`);
  };
  for (const giver of givers) giver.expect(given.rows);
  for (const [table, rows] of given.rows)
    tell(
      `--rows ${table}`,
      givers.map((giver) => giver.giveRows(table, rows)),
    );
  for (const giver of givers) giver.bring();
  for (const [name, text] of given.sets)
    tell(
      `--set ${name}=${text}`,
      givers.map((giver) => giver.set(name, text)),
    );
  return { stacks: givers.map((giver) => giver.given()), faults };
}

type Answer =
  | { readonly kind: 'taken' }
  /** The stack has no such name, which is no fault while another has. */
  | { readonly kind: 'absent'; readonly reason: string; readonly near: boolean }
  | { readonly kind: 'refused'; readonly reasons: readonly string[] };

const taken: Answer = { kind: 'taken' };

function refusalsIn(answers: readonly Answer[], everySheet: boolean): readonly string[] {
  const refused = answers.flatMap((answer) => (answer.kind === 'refused' ? answer.reasons : []));
  if (refused.length > 0) return [...new Set(refused)];
  if (!everySheet) return [];
  const absent = answers.flatMap((answer) => (answer.kind === 'absent' ? [answer] : []));
  if (absent.length < answers.length) return [];
  const told = absent.find(({ near }) => near) ?? absent[0];
  return told === undefined ? [] : [told.reason];
}

function absentWord(word: string, words: Iterable<string>, say: (near: string | undefined) => string): Answer {
  const near = nearestWord(word, words);
  return { kind: 'absent', reason: say(near), near: near !== undefined };
}

function refused(reason: string): Answer {
  return { kind: 'refused', reasons: [reason] };
}

class EntryGiver {
  private stack: CompiledStack;
  private readonly templates: CompiledStack;
  /** The stack in which choices among rows are those of the rows that are given. */
  private offering: CompiledStack;
  private readonly otherRows = new Set<string>();
  private readonly context: CliContext;
  private readonly lines = new Map<string, GivenValue>();
  private readonly cells = new Map<string, Map<string, Map<string, GivenValue>>>();
  /** Tables whose rows were refused: their cells cannot be judged. */
  private readonly unknownRows = new Set<string>();

  constructor(stack: CompiledStack, context: CliContext) {
    this.stack = stack;
    this.templates = stack;
    this.offering = stack;
    this.context = context;
  }

  /** Rows that are to come: others, given before them, may choose among them. */
  expect(rows: Given['rows']): void {
    const given = [...rows].flatMap(([name, value]) => {
      const key = this.stack.tables.get(name)?.key;
      return key === undefined ? [] : [[name, rowsNamed(value, key)] as const];
    });
    this.offering = withStandingChoices(this.stack, new Map(given));
  }

  /** The rows of other tables that come and go with those that were given. */
  bring(): void {
    this.stack = withBroughtRows(this.templates, this.stack, this.otherRows);
  }

  given(): GivenStack {
    const tables = new Map([...this.cells].map(([name, cells]) => [name, { added: new Map(), cells }]));
    return { stack: this.stack, entries: { lines: this.lines, tables } };
  }

  giveRows(name: string, value: unknown): Answer {
    const { tables } = this.stack;
    const table = tables.get(name);
    if (table === undefined) return absentWord(name, tables.keys(), (near) => messages.noTable(name, near));
    this.unknownRows.add(name);
    if (value === undefined) return taken;
    const read = readGivenRows(this.offering.tables.get(name) ?? table, value, this.context);
    if (read.kind === 'refused') return read;
    this.unknownRows.delete(name);
    this.otherRows.add(name);
    this.stack = { ...this.stack, tables: new Map([...tables, [name, { ...table, rows: read.rows }]]) };
    return taken;
  }

  set(name: string, text: string): Answer {
    const named = parseCellName(name);
    if (named?.kind === 'line') return this.setLine(named.line, text);
    return named?.kind === 'cell' ? this.setCell(named, text) : refused(messages.cellForm(name));
  }

  private setLine(name: string, text: string): Answer {
    const line = this.stack.lines.get(name);
    if (line === undefined) {
      if (this.stack.tables.has(name)) return refused(messages.isTable(name));
      return absentWord(name, this.stack.lines.keys(), (near) => messages.noLine(name, near));
    }
    const read = readGivenText(text, line.definition, line.type, this.context);
    if (read.kind === 'refused') return refused(read.reason);
    this.lines.set(name, read);
    return taken;
  }

  private setCell({ table: name, row, column: columnName }: NamedCell, text: string): Answer {
    if (name === productTable) return refused(messages.ofPriceList);
    const table = this.stack.tables.get(name);
    if (table === undefined) return absentWord(name, this.stack.tables.keys(), (near) => messages.noTable(name, near));
    const column = this.offering.tables.get(name)?.columns.get(columnName);
    if (column === undefined)
      return absentWord(columnName, table.columns.keys(), (near) => messages.noColumn(name, columnName, near));
    if (this.unknownRows.has(name)) return taken;
    return this.enter(table, column, row, text);
  }

  private enter(table: CompiledTable, column: CompiledColumn, row: string, text: string): Answer {
    const { name, rows } = table.definition;
    const ids = rows === 'gathered' ? [...this.context.products.keys()] : table.rows.map(({ id }) => id);
    const at = rowPlace(ids, row);
    // What a gathered table's rows are is known only when all products are; they are named, never numbered.
    const id = at === undefined || (rows === 'gathered' && /^\d/.test(row)) ? undefined : ids[at];
    if (id === undefined) {
      const reason = whyNotTyped(column.definition);
      if (reason !== undefined) return refused(reason);
      if (rows === 'gathered' && !this.context.productsKnown) return taken;
      return absentWord(row, ids, (near) => messages.noRow(name, row, rows === 'gathered' ? [] : ids, near));
    }
    const cells: RowFile = table.rows.find((own) => own.id === id)?.cells ?? {};
    const inRow = this.cells.get(name)?.get(id) ?? new Map<string, GivenValue>();
    const chosen = Object.fromEntries([...inRow].map(([other, given]) => [other, given.value]));
    const read = readGivenText(
      text,
      column.definition,
      typeInRow(table, column, { ...cells, ...chosen }),
      this.context,
    );
    if (read.kind === 'refused') return refused(read.reason);
    if (inRow.has(column.definition.name)) return refused(messages.setTwice);
    inRow.set(column.definition.name, read);
    const inTable = this.cells.get(name) ?? new Map<string, Map<string, GivenValue>>();
    this.cells.set(name, inTable.set(id, inRow));
    return taken;
  }
}
