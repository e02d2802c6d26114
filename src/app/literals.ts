/** A node of the syntax tree, as ESTree names its kinds. */
export type Node = { readonly type: string; readonly start: number; readonly end: number } & Readonly<
  Record<string, unknown>
>;

/** What a literal can hold, and a table of literals. */
export type Text = string | number | boolean | readonly Text[] | { readonly [name: string]: Text };

/** Values of the constants of a file, by name. */
export type Constants = ReadonlyMap<string, Text>;

const isNode = (value: unknown): value is Node =>
  typeof value === 'object' && value !== null && 'type' in value && typeof value.type === 'string';

export const nodesIn = (value: unknown): readonly Node[] =>
  (Array.isArray(value) ? value : [value]).filter(isNode);

/** The expression itself, without what only the type checker reads. */
function bare(node: Node): Node {
  const typed = ['TSAsExpression', 'TSSatisfiesExpression', 'ParenthesizedExpression'].includes(node.type);
  return typed && isNode(node['expression']) ? bare(node['expression']) : node;
}

/** Name and value of a property that holds nothing but literals. */
export function propertyOf(node: Node, constants: Constants): readonly [string, Text] | undefined {
  const { key, kind, computed, method, shorthand, value } = node;
  if (node.type !== 'Property' || kind !== 'init' || computed || method || shorthand) return undefined;
  const name = isNode(key) ? (key['name'] ?? key['value']) : undefined;
  const held = isNode(value) ? valueOf(value, constants) : undefined;
  return typeof name === 'string' && held !== undefined ? [name, held] : undefined;
}

/** All of them, or undefined if one is missing. */
function whole<T>(values: readonly (T | undefined)[]): readonly T[] | undefined {
  const there = values.filter((value) => value !== undefined);
  return there.length === values.length ? there : undefined;
}

/** The value of an expression that is the same whenever it is asked for; undefined for what has to be run. */
export function valueOf(node: Node, constants: Constants): Text | undefined {
  const { type, value, name, elements, properties, quasis } = bare(node);
  switch (type) {
    case 'Literal':
      return ['string', 'number', 'boolean'].includes(typeof value) ? (value as Text) : undefined;
    case 'TemplateLiteral': {
      const [only, ...more] = nodesIn(quasis);
      return only && more.length === 0 ? textOf(only).cooked : undefined;
    }
    case 'Identifier':
      return constants.get(String(name));
    case 'ArrayExpression': {
      const held = elements as readonly unknown[];
      return whole(held.map((each) => (isNode(each) ? valueOf(each, constants) : undefined)));
    }
    case 'ObjectExpression': {
      const pairs = whole(nodesIn(properties).map((each) => propertyOf(each, constants)));
      return pairs && Object.fromEntries(pairs);
    }
    default:
      return undefined;
  }
}

/** A stretch of a template, as it is written and as it reads. */
export const textOf = (quasi: Node): { readonly raw: string; readonly cooked: string } =>
  quasi['value'] as { readonly raw: string; readonly cooked: string };

/** The constants of a file that hold nothing but literals; one may lean on those above it. */
export function constantsOf(program: readonly Node[]): Constants {
  const constants = new Map<string, Text>();
  for (const statement of program) {
    const declaration = isNode(statement['declaration']) ? statement['declaration'] : statement;
    if (declaration['kind'] !== 'const') continue;
    for (const { id, init } of nodesIn(declaration['declarations'])) {
      const held = isNode(init) ? valueOf(init, constants) : undefined;
      if (isNode(id) && held !== undefined) constants.set(String(id['name']), held);
    }
  }
  return constants;
}
