import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { parseSync } from 'vite';

/** A file of the project, its path from the top with forward slashes. */
export type SourceFile = { readonly path: string; readonly text: string };

/** What a wall found: which rule, where, and the words that broke it. */
export type Finding = { readonly rule: string; readonly at: string; readonly what: string };

/** A node of the syntax tree, as ESTree names its kinds. */
export type Node = { readonly type: string; readonly start: number } & Readonly<Record<string, unknown>>;

const root = join(import.meta.dirname, '../..');
const folders = ['src', 'service-worker', 'tests'];

/** Every TypeScript file of the project. */
export function projectSources(): SourceFile[] {
  return folders
    .flatMap((folder) => filesUnder(folder))
    .filter((path) => /\.tsx?$/.test(path) && !path.endsWith('.d.ts'))
    .map((path) => ({ path, text: readFileSync(join(root, path), 'utf8') }));
}

/** The paths of all files under a folder of the project. */
export function filesUnder(folder: string): string[] {
  return readdirSync(join(root, folder), { recursive: true, withFileTypes: true })
    .filter((entry) => entry.isFile())
    .map((entry) =>
      join(entry.parentPath, entry.name)
        .slice(root.length + 1)
        .replaceAll('\\', '/'),
    );
}

/** Calls `look` for every node, parents (nearest last) beside it. */
export function walkSource(
  { path, text }: SourceFile,
  look: (node: Node, parents: readonly Node[]) => void,
): void {
  const { program, errors } = parseSync(path, text);
  if (errors.length > 0) throw new Error(`${path} does not parse: ${errors[0]?.message}`);
  descend(program, [], look);
}

function descend(
  value: unknown,
  parents: readonly Node[],
  look: (node: Node, parents: readonly Node[]) => void,
): void {
  if (Array.isArray(value)) for (const item of value) descend(item, parents, look);
  else if (isNode(value)) {
    look(value, parents);
    const below = [...parents, value];
    for (const child of Object.values(value)) descend(child, below, look);
  }
}

/** Whether a child of the tree is a node, and of the kind if one is named. */
export function isNode(value: unknown, type?: string): value is Node {
  return (
    typeof value === 'object' &&
    value !== null &&
    'type' in value &&
    typeof value.type === 'string' &&
    (type === undefined || value.type === type)
  );
}

/** The name of an identifier, of a member expression's last part, or of a string key. */
export function nameOf(value: unknown): string | undefined {
  if (isNode(value, 'MemberExpression')) return nameOf(value['property']);
  if (isNode(value, 'Identifier') || isNode(value, 'JSXIdentifier')) return String(value['name']);
  if (isNode(value, 'Literal') && typeof value['value'] === 'string') return value['value'];
  return undefined;
}

/** A finding at a node. */
export function found(rule: string, { path, text }: SourceFile, node: Node, what: string): Finding {
  return { rule, at: `${path}:${text.slice(0, node.start).split('\n').length}`, what };
}
