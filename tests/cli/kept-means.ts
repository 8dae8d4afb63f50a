import { loadTemplates } from '../../src/cli/load-templates.ts';
import type { PricingMeans } from '../../src/cli/pricing-means.ts';
import type { SheetFile } from '../../src/template/sheet-schema.ts';
import { type StackResult, stackOf } from '../../src/template/stack-of.ts';
import { engineValues } from '../helpers/engine-values.ts';

const templates = loadTemplates();
const compiled = new WeakMap<SheetFile, StackResult>();

/** The command line's means for many prices: templates read once, a shipped system compiled once, the engine's workbooks kept. */
export const keptMeans: PricingMeans = {
  templates: () => templates,
  compile: (files, parts) => {
    const stack = compiled.get(files.system) ?? stackOf(files, parts);
    compiled.set(files.system, stack);
    return stack;
  },
  evaluate: (plan) => engineValues(plan),
};
