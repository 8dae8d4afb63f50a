import { writtenLine } from '../../../quote/option-results.ts';
import { layerOf } from '../../../quote/quote-document.ts';
import { filledLine } from '../../../quote/said-texts.ts';
import type { ComposedSection } from '../../../template/composed-sheet.ts';
import type { LineFile } from '../../../template/line-schema.ts';
import type { ShownField } from '../../parts/shown-field.ts';
import { KeptViews } from '../kept-views.ts';
import {
  FieldMaker,
  type KeptFields,
  noFields,
  plainStandard,
  type ShownFrom,
  type ShownInstead,
} from './field-maker.ts';
import { type KeptTables, noTables, type ShownTable, TableMaker } from './shown-table.ts';

/** A sheet as a screen shows it. */
export interface ShownSheet {
  readonly title: string;
  readonly sections: readonly ShownSection[];
}

export interface ShownSection {
  readonly id: string;
  readonly title: string;
  readonly note: string;
  readonly lines: readonly ShownField[];
  readonly tables: readonly ShownTable[];
  /** Names of the lines at which our standard stands and nobody has looked. */
  readonly unchecked: readonly string[];
}

/** What was made of a sheet before, to be given again where nothing of it changed. */
export interface KeptSheet {
  readonly sections: KeptViews<ShownSection>;
  readonly tables: KeptTables;
  readonly fields: KeptFields;
}

export function nothingKept(): KeptSheet {
  return { sections: new KeptViews(), tables: noTables(), fields: noFields() };
}

/** The sheet at a place with the numbers of one option. What is the same as in `kept` is the same object. */
export function shownSheet(from: ShownFrom, kept: KeptSheet = nothingKept()): ShownSheet {
  const layer = layerOf(from.place);
  const sheet = from.results.stack.sheets.find((candidate) => candidate.layer === layer);
  const maker = new SectionMaker(from, kept);
  return { title: sheet?.title ?? '', sections: (sheet?.sections ?? []).map((section) => maker.section(section)) };
}

class SectionMaker {
  private readonly maker: FieldMaker;
  private readonly tables: TableMaker;
  private readonly kept: KeptViews<ShownSection>;

  constructor(from: ShownFrom, kept: KeptSheet) {
    this.maker = new FieldMaker(from, kept.fields);
    this.tables = new TableMaker(this.maker, kept.tables);
    this.kept = kept.sections;
  }

  section(section: ComposedSection): ShownSection {
    const { id, title, note = '' } = section;
    const lines = section.lines.flatMap(({ line }) => this.line(line.name) ?? []);
    const tables = section.tables.flatMap(({ table }) => this.tables.table(table.name) ?? []);
    const unchecked = lines.filter(isUnchecked).map(({ name }) => name);
    return this.kept.view(id, [section, ...lines, ...tables], () => ({ id, title, note, lines, tables, unchecked }));
  }

  private line(name: string): ShownField | undefined {
    const line = this.maker.results.stack.lines.get(name);
    if (line === undefined || line.definition.kind === 'check') return undefined;
    const { definition, type } = line;
    const stored = this.maker.lines[name];
    const readsBeyond = definition.kind === 'text' || (definition.kind === 'formula' && stored !== undefined);
    if (!readsBeyond && this.maker.holdsAsBefore(name) && this.maker.readsAsBefore(name)) return this.maker.last(name);
    // A text is told only while its condition holds: an unmet “Go” must not stand on the sheet.
    const isConditional = definition.kind === 'text' && line.tree !== undefined;
    if (isConditional && this.maker.evaluate(line.tree, { kind: 'line', name }) !== true) return undefined;
    const cell = this.maker.results.option.plan.lines.get(name);
    const standard =
      definition.kind === 'words'
        ? definition.words
        : plainStandard('value' in definition ? definition.value : undefined);
    const worked =
      definition.kind === 'formula' && stored !== undefined
        ? this.maker.evaluate(line.tree, { kind: 'line', name })
        : undefined;
    return this.maker.field(
      name,
      { definition, type, cell, stored, standard, ownFormula: false, worked },
      this.told(definition),
    );
  }

  /** Of what has no cell: a text with its holes filled, or what a person wrote. */
  private told({ kind, name }: LineFile): ShownInstead {
    if (kind === 'text')
      return { shown: filledLine(this.maker.results, name, this.maker.evaluator, this.maker.measures) };
    if (kind !== 'words') return {};
    const words = writtenLine(this.maker.results, name);
    return { shown: words, typed: words };
  }
}

/** What nobody has written needs no looking at. */
function isUnchecked({ kind, standing }: ShownField): boolean {
  return standing === 'unchecked' && (kind === 'number' || kind === 'yesNo' || kind === 'choice');
}
