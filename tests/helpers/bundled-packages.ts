import { join } from 'node:path';
import type { TestRunnerPlugin } from '@web/test-runner';
import { build } from 'esbuild';

const address = (name: string): string => `/bundled-packages/${name}.js`;

/**
 * A web-test-runner plugin for packages that a browser cannot import file by file, since they are, or lead to, UMD
 * modules without named exports. Each is bundled once a run and served as one module.
 */
export function bundledPackages(rootDir: string, names: readonly string[]): TestRunnerPlugin {
  const bundles = new Map<string, Promise<string>>();
  return {
    name: 'bundled-packages',
    resolveImport: ({ source }) => (names.includes(source) ? address(source) : undefined),
    serve: async ({ path }) => {
      const name = names.find((candidate) => address(candidate) === path);
      if (name === undefined) return undefined;
      const bundle = bundles.get(name) ?? bundlePackage(rootDir, name);
      bundles.set(name, bundle);
      return { body: await bundle, type: 'js' };
    },
  };
}

/** The package as one ES module, text of the file. */
async function bundlePackage(rootDir: string, name: string): Promise<string> {
  const result = await build({
    stdin: { contents: `export * from '${name}'; export { default } from '${name}';`, resolveDir: rootDir },
    outfile: join(rootDir, '.cache', 'bundled-packages', `${name}.js`),
    bundle: true,
    format: 'esm',
    platform: 'browser',
    write: false,
    logLevel: 'error',
  });
  const [file] = result.outputFiles;
  if (file === undefined) throw new Error(`Bundling ${name} gave no file.`);
  return file.text;
}
