import { readdirSync, readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { normalizePath, type Plugin } from 'vite';
import type { Text } from './literals.ts';
import { partWords } from './part-words.ts';

const folder = normalizePath(fileURLToPath(new URL('../words/en/', import.meta.url)));
const id = 'virtual:catalogue';

/** Words that are data files of their own, or of another program. */
const elsewhere = /^(?:help|drawings|reason-texts.*|reasons|cli|schema)\.ts$/;

/** The files of words whose texts are in the catalogue. */
export const catalogued: readonly string[] = readdirSync(folder)
  .filter((file) => !elsewhere.test(file))
  .sort()
  .map((file) => folder + file);

/**
 * The sentences of a language are data: what the words hold as plain text goes into one JSON file that is read before
 * the app starts; what puts a sentence together stays code. Only the build does so, tests read the words.
 */
export function catalogue(): Plugin {
  const texts: Text[] = [];
  const parted = new Map(
    catalogued.map((path) => [path, partWords(path, readFileSync(path, 'utf8'), texts)]),
  );
  return {
    name: 'catalogue',
    apply: 'build',
    enforce: 'pre',
    resolveId: (asked) => (asked === id ? `\0${id}` : undefined),
    load(asked) {
      if (asked !== `\0${id}`) return undefined;
      const file = this.emitFile({ type: 'asset', name: 'catalogue.json', source: JSON.stringify(texts) });
      return `export const $texts = []; export const address = import.meta.ROLLUP_FILE_URL_${file};`;
    },
    transform(_code, path) {
      const code = parted.get(path);
      return code === undefined ? undefined : { code: `import { $texts } from '${id}';\n${code}`, map: null };
    },
  };
}
