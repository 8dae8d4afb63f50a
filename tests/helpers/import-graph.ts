import { cruise, type ICruiseResult, type IDependency } from 'dependency-cruiser';

/** One import as written in a source file. */
export interface Import {
  readonly from: string;
  readonly to: ImportTarget;
}

export type ImportTarget =
  | { readonly kind: 'file'; readonly path: string }
  | { readonly kind: 'package'; readonly name: string }
  | { readonly kind: 'node'; readonly name: string }
  | { readonly kind: 'missing'; readonly written: string };

export interface ImportGraph {
  /** Files that were read, as paths from the repository's top. */
  readonly modules: readonly string[];
  readonly imports: readonly Import[];
  /** Each circle of imports once for every file on it, as a sentence. */
  readonly circles: readonly string[];
}

/** The imports under a folder, those of types included. */
export async function readImportGraph(folder: string, baseDir: string): Promise<ImportGraph> {
  const { output } = await cruise(
    [folder],
    {
      baseDir,
      tsPreCompilationDeps: true,
      doNotFollow: { path: 'node_modules' },
      validate: true,
      ruleSet: { forbidden: [{ name: 'no-circle', severity: 'error', from: {}, to: { circular: true } }] },
    },
    { exportsFields: ['exports'], conditionNames: ['import', 'types', 'node', 'default'] },
  );
  if (typeof output === 'string') throw new Error(`dependency-cruiser answered with text: ${output}`);
  const sources = output.modules.filter(({ source }) => source.startsWith(`${folder}/`));
  return {
    modules: sources.map(({ source }) => source),
    imports: sources.flatMap(({ source, dependencies }) =>
      dependencies.map((dependency) => ({ from: source, to: targetOf(dependency) })),
    ),
    circles: circlesIn(output),
  };
}

function targetOf(dependency: IDependency): ImportTarget {
  if (dependency.coreModule) return { kind: 'node', name: dependency.module };
  if (dependency.couldNotResolve) return { kind: 'missing', written: dependency.module };
  if (!dependency.resolved.includes('node_modules/')) return { kind: 'file', path: dependency.resolved };
  return { kind: 'package', name: packageOf(dependency.module) };
}

/** `lit` of `lit/decorators.js`, `@scope/name` of `@scope/name/part.js`. */
function packageOf(specifier: string): string {
  return specifier
    .split('/')
    .slice(0, specifier.startsWith('@') ? 2 : 1)
    .join('/');
}

function circlesIn({ summary }: ICruiseResult): string[] {
  return summary.violations.map(({ from, to, cycle }) =>
    [from, ...(cycle ?? [{ name: to }]).map(({ name }) => name)].join(' → '),
  );
}
