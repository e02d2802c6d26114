import { fileURLToPath } from 'node:url';
import { defineConfig } from 'vite';

const at = (path: string): string => fileURLToPath(new URL(path, import.meta.url));

export default defineConfig({
  root: at('.'),
  publicDir: at('../../public'),
  oxc: { jsx: { runtime: 'automatic', importSource: 'preact' } },
  build: { outDir: at('../../dist'), emptyOutDir: true, target: 'es2022' },
});
