import { productTable } from '../formula/cells.ts';
import type { SheetFault } from './sheet-fault.ts';
import type { SheetFile } from './sheet-schema.ts';

/** What lines and columns were called before (`was`), for files and quotes that call them so still. */
export interface FormerNames {
  /** Former name of a line → its name now. */
  readonly lines: ReadonlyMap<string, string>;
  /** Table → former name of a column → its name now. The fields of products are columns of theirs. */
  readonly columns: ReadonlyMap<string, ReadonlyMap<string, string>>;
}

export const noFormerNames: FormerNames = { lines: new Map(), columns: new Map() };

interface Named {
  readonly name: string;
  readonly was: readonly string[];
  readonly path: string;
}

/**
 * The former names in sheets that lie on each other. A former name stands for one thing: that two places claim it, or that
 * it is a living name, is a fault.
 */
export function formerNamesOf(files: readonly SheetFile[], faults: SheetFault[]): FormerNames {
  const { lines, tables } = namedIn(files);
  const columns = [...tables.values()].flat();
  if ([...lines, ...columns].every(({ was }) => was.length === 0)) return noFormerNames;
  const overall = placesOf([...lines, ...[...tables.keys()].map((name) => ({ name, path: `the table ${name}` }))]);
  const claims = new Claims(faults);
  const ofLines = claims.presentNames(lines, new Map([...placesOf(columns), ...overall]));
  const ofColumns = [...tables].map(([table, own]) => {
    const inTable = claims.within();
    return [table, inTable.presentNames(own, new Map([...placesOf(own), ...overall]))] as const;
  });
  return { lines: ofLines, columns: new Map(ofColumns) };
}

function placesOf(named: readonly Pick<Named, 'name' | 'path'>[]): ReadonlyMap<string, string> {
  return new Map(named.map(({ name, path }) => [name, path]));
}

/** Who claims which former name, each once. */
class Claims {
  private readonly faults: SheetFault[];
  private readonly claimed: Map<string, string>;

  constructor(faults: SheetFault[], claimed: ReadonlyMap<string, string> = new Map()) {
    this.faults = faults;
    this.claimed = new Map(claimed);
  }

  /** Of one table, in which what lines claim is claimed too. */
  within(): Claims {
    return new Claims(this.faults, this.claimed);
  }

  presentNames(named: readonly Named[], living: ReadonlyMap<string, string>): ReadonlyMap<string, string> {
    const present = new Map<string, string>();
    for (const { name, was, path } of named) {
      for (const former of was) {
        const reason = this.refusal(former, living);
        if (reason !== undefined) this.faults.push({ path: `${path}.was`, reason });
        else {
          present.set(former, name);
          this.claimed.set(former, path);
        }
      }
    }
    return present;
  }

  private refusal(former: string, living: ReadonlyMap<string, string>): string | undefined {
    const lives = living.get(former);
    if (lives !== undefined) return `“${former}” is a living name: ${lives}.`;
    const claimed = this.claimed.get(former);
    return claimed === undefined ? undefined : `“${former}” is claimed as a former name already: ${claimed}.`;
  }
}

function namedIn(files: readonly SheetFile[]): { lines: Named[]; tables: Map<string, Named[]> } {
  const lines: Named[] = [];
  const tables = new Map<string, Named[]>();
  for (const file of files) {
    const inFile = (path: string): string => `${file.layer} ${file.id}: ${path}`;
    for (const section of file.sections) {
      if (section.kind !== 'own') continue;
      for (const { line, path } of section.lines)
        lines.push({ name: line.name, was: line.was ?? [], path: inFile(path) });
      for (const table of section.tables) {
        const columns = table.columns.map(({ name, was = [] }, at) => ({
          name,
          was,
          path: inFile(`${table.path}.columns[${at}]`),
        }));
        tables.set(file.layer === 'pricelist' ? productTable : table.name, columns);
      }
    }
  }
  return { lines, tables };
}
