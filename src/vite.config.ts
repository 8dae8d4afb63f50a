import { fileURLToPath } from 'node:url';
import { defineConfig } from 'vite';
import { shippedSheets } from './build/shipped-sheets.ts';

const here = (path: string): string => fileURLToPath(new URL(path, import.meta.url));

export default defineConfig({
  root: here('.'),
  // Relative addresses, so that the built page also works from a sub-folder of a static host.
  base: './',
  cacheDir: here('../.cache/vite'),
  plugins: [shippedSheets(here('../templates'))],
  build: {
    outDir: here('../dist'),
    emptyOutDir: true,
    target: 'es2022',
    // HyperFormula alone, in the auditor's worker, is over the usual 500 kB.
    chunkSizeWarningLimit: 1000,
  },
  worker: { format: 'es' },
  // The templates lie beside src, so the development server must be let out of its root.
  server: { host: '127.0.0.1', fs: { allow: [here('..')] } },
  preview: { host: '127.0.0.1', port: 4173, strictPort: false },
});
