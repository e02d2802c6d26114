import { fileURLToPath } from 'node:url';
import { build, type Plugin as BundlerPlugin } from 'esbuild';
import type { Plugin } from 'vite';

const prefix = 'virtual:data/';

/** What is data and no code: written in TypeScript to be checked, shipped as JSON that a phone need not compile. */
const files: Readonly<Record<string, readonly [module: string, expression: string]>> = {
  'built-in': ['../reference/built-in.ts', 'all.builtIn'],
  reasons: ['../words/en/reason-texts.ts', 'all.reasonTexts'],
  demo: ['../reference/demo.ts', 'all.demoRecords()'],
  help: ['../words/en/help.ts', 'all.help'],
  drawings: ['help/drawing-trees.ts', 'all.drawingTrees()'],
};

/** In data a class goes by the name that its style sheet has for it; what the sheet makes of it is the page's matter. */
const classNames: BundlerPlugin = {
  name: 'class-names',
  setup(bundler) {
    const contents = 'export default new Proxy({}, { get: (_sheet, name) => name })';
    bundler.onLoad({ filter: /\.module\.css$/ }, () => ({ contents, loader: 'js' }));
  },
};

async function jsonOf(name: string): Promise<string> {
  const [module, expression] = files[name] ?? [];
  if (module === undefined) throw new Error(`no such data: ${name}`);
  const path = fileURLToPath(new URL(module, import.meta.url));
  const bundled = await build({
    stdin: {
      contents: `import * as all from ${JSON.stringify(path)}; export const json = JSON.stringify(${expression});`,
      resolveDir: fileURLToPath(new URL('.', import.meta.url)),
    },
    bundle: true,
    format: 'esm',
    write: false,
    jsx: 'automatic',
    jsxImportSource: 'preact',
    plugins: [classNames],
  });
  const code = Buffer.from(bundled.outputFiles[0]?.contents ?? []).toString('base64');
  const made = (await import(`data:text/javascript;base64,${code}`)) as { json: string };
  return made.json;
}

/** `import url from 'virtual:data/<name>'` gives the address of the data as a JSON file. */
export const dataFiles: Plugin = {
  name: 'data-files',
  resolveId: (id) => (id.startsWith(prefix) ? `\0${id}` : undefined),
  async load(id) {
    if (!id.startsWith(`\0${prefix}`)) return undefined;
    const name = id.slice(prefix.length + 1);
    const source = await jsonOf(name);
    if (this.environment.mode === 'dev')
      return `export default ${JSON.stringify(`data:application/json,${encodeURIComponent(source)}`)}`;
    const file = this.emitFile({ type: 'asset', name: `${name}.json`, source });
    return `export default import.meta.ROLLUP_FILE_URL_${file};`;
  },
};
