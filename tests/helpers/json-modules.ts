import type { TestRunnerPlugin } from '@web/test-runner';

const mark = '?as-module';

/**
 * A web-test-runner plugin that serves an imported JSON file as a script: the TypeScript step drops the
 * `with { type: 'json' }` of an import. A file that is fetched stays JSON.
 */
export function jsonModules(): TestRunnerPlugin {
  return {
    name: 'json-modules',
    resolveImport: ({ source }) => (source.endsWith('.json') ? source + mark : undefined),
    resolveMimeType: ({ url }) => (url.endsWith(mark) ? 'js' : undefined),
    transform: ({ url, body }) => (url.endsWith(mark) ? `export default ${String(body)};` : undefined),
  };
}
