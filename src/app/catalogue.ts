import { readdirSync } from 'node:fs';
import { basename, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { build } from 'esbuild';
import type { Plugin } from 'vite';

type Plain = string | number | boolean | null | readonly Plain[] | { readonly [key: string]: Plain };
type Exports = Readonly<Record<string, unknown>>;

const folder = fileURLToPath(new URL('../words/en/', import.meta.url));
const id = 'virtual:catalogue';

/** Words that are data files of their own, or of another program. */
const elsewhere = /^(?:help|drawings|reason-texts.*|reasons|cli|schema)\.ts$/;

function isPlain(value: unknown): value is Plain {
  if (value === null || ['string', 'number', 'boolean'].includes(typeof value)) return true;
  if (Array.isArray(value)) return value.every(isPlain);
  const isObject = typeof value === 'object' && Object.getPrototypeOf(value) === Object.prototype;
  return isObject && Object.values(value).every(isPlain);
}

/** The part of an export that is text and not code: all of it, some fields, or none. */
function plainPart(value: unknown): Plain | undefined {
  if (isPlain(value)) return value;
  if (typeof value !== 'object' || value === null) return undefined;
  const fields = Object.entries(value).filter((each): each is [string, Plain] => isPlain(each[1]));
  return fields.length === 0 ? undefined : Object.fromEntries(fields);
}

/** What a module of words exports, worked out. */
async function exportsOf(file: string): Promise<Exports> {
  const bundled = await build({ entryPoints: [file], bundle: true, format: 'esm', write: false });
  const code = Buffer.from(bundled.outputFiles[0]?.contents ?? []).toString('base64');
  return (await import(`data:text/javascript;base64,${code}`)) as Exports;
}

const nameIn = (file: string, name: string): string => `${basename(file, '.ts')}.${name}`;

async function allTexts(): Promise<ReadonlyMap<string, Plain>> {
  const files = readdirSync(folder).filter((file) => !elsewhere.test(file));
  const lists = await Promise.all(
    files.map(async (file) => {
      const values = Object.entries(await exportsOf(join(folder, file)));
      return values.flatMap(([name, value]) => {
        const plain = plainPart(value);
        return plain === undefined ? [] : [[nameIn(file, name), plain] as const];
      });
    }),
  );
  return new Map(lists.flat());
}

interface Node {
  readonly type: string;
  readonly start: number;
  readonly end: number;
}

interface Initial extends Node {
  readonly properties?: readonly (Node & {
    readonly key?: { readonly name?: string; readonly value?: unknown };
  })[];
}

/** The code of an export without its plain part, which is read from the catalogue; itself where nothing is plain. */
function withoutPlain(place: number, value: unknown, initial: Initial, code: string): string {
  const source = (node: Node): string => code.slice(node.start, node.end);
  const plain = plainPart(value);
  const text = `$texts[${place}]`;
  if (plain === undefined) return source(initial);
  if (plain === value) return text;
  const properties = initial.type === 'ObjectExpression' ? (initial.properties ?? []) : [];
  const isKnown = properties.length > 0 && properties.every(({ type }) => type === 'Property');
  if (!isKnown) return source(initial);
  const kept = properties.filter(
    ({ key }) => !Object.hasOwn(plain as object, String(key?.name ?? key?.value)),
  );
  return `{ ...${text}, ${kept.map(source).join(', ')} }`;
}

/**
 * The sentences of a language are data: what a module of words holds as plain text goes into one JSON file that is
 * read before the app starts; what puts a sentence together stays code. Only the build does so, tests read the words.
 */
export function catalogue(): Plugin {
  const texts = allTexts();
  return {
    name: 'catalogue',
    apply: 'build',
    enforce: 'post',
    resolveId: (asked) => (asked === id ? `\0${id}` : undefined),
    async load(asked) {
      if (asked !== `\0${id}`) return undefined;
      const source = JSON.stringify([...(await texts).values()]);
      const file = this.emitFile({ type: 'asset', name: 'catalogue.json', source });
      return `export const $texts = []; export const address = import.meta.ROLLUP_FILE_URL_${file};`;
    },
    async transform(code, file) {
      if (!file.startsWith(folder) || elsewhere.test(basename(file))) return undefined;
      const [values, names] = [await exportsOf(file), [...(await texts).keys()]];
      let made = code;
      for (const node of this.parse(code).body.toReversed()) {
        const declared = node.type === 'ExportNamedDeclaration' ? node.declaration : undefined;
        if (declared?.type !== 'VariableDeclaration') continue;
        for (const { id: named, init } of declared.declarations) {
          if (named.type !== 'Identifier' || !init) continue;
          const place = names.indexOf(nameIn(file, named.name));
          const text = withoutPlain(place, values[named.name], init as unknown as Initial, code);
          made = made.slice(0, init.start) + text + made.slice(init.end);
        }
      }
      return { code: `import { $texts } from '${id}';\n${made}`, map: null };
    },
  };
}
