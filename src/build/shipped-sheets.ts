import type { Plugin } from 'vite';
import { type ReadShipped, readShipped } from './read-shipped.ts';

const firstModule = 'virtual:shipped-sheets';
const systemsModule = 'virtual:shipped-systems';

/**
 * A Vite plugin that hands the shipped sheets and the price list to the app checked, hashed and as JSON, so that the page does none
 * of it when it starts. A fault in them ends the build with its words. Systems are a module of their own, loaded when wanted.
 */
export function shippedSheets(folder: string): Plugin {
  let reading: Promise<ReadShipped> | undefined;
  const forget = (): void => {
    reading = undefined;
  };
  return {
    name: 'shipped-sheets',
    buildStart: forget,
    watchChange: forget,
    resolveId: (id) => (id === firstModule || id === systemsModule ? `\0${id}` : undefined),
    async load(id) {
      if (id !== `\0${firstModule}` && id !== `\0${systemsModule}`) return undefined;
      reading ??= readShipped(folder);
      const shipped = await reading;
      for (const path of shipped.paths) this.addWatchFile(path);
      if (shipped.faults.length > 0) this.error(`The templates cannot be shipped.\n${shipped.faults.join('\n')}`);
      return id === `\0${systemsModule}` ? systemsText(shipped) : firstText(shipped);
    },
  };
}

function firstText({ under, offered, products }: ReadShipped): string {
  return [
    `export const under = ${parsed(under)};`,
    `export const systems = ${parsed(offered)};`,
    `export const products = ${parsed(products)};`,
    `export const fetchSystems = async () => (await import('${systemsModule}')).systems;`,
  ].join('\n');
}

function systemsText({ systems }: ReadShipped): string {
  return `export const systems = ${parsed(systems)};`;
}

/** A text that is parsed is there sooner than the same as JavaScript. */
function parsed(value: unknown): string {
  return `JSON.parse(${JSON.stringify(JSON.stringify(value))})`;
}
