import { parseSync } from 'vite';
import {
  constantsOf,
  nodesIn,
  propertyOf,
  textOf,
  valueOf,
  type Constants,
  type Node,
  type Text,
} from './literals.ts';

type Edit = readonly [start: number, end: number, code: string];

interface Parting {
  readonly code: string;
  readonly texts: Text[];
  readonly edits: Edit[];
}

/**
 * The code of a file without its texts, which are added to those given; the code asks for each as `$texts[place]`.
 * What is worked out when it is asked for stays code.
 */
export function partWords(path: string, code: string, texts: Text[]): string {
  const { program, errors } = parseSync(path, code);
  if (errors[0]) throw new Error(`${path}: ${errors[0].message}`);
  const parting: Parting = { code, texts, edits: [] };
  const statements = nodesIn(program.body);
  const constants = constantsOf(statements);
  for (const statement of statements) part(parting, statement, constants);
  return edited(parting);
}

/** What is shorter costs no more than asking for it. */
const leastLength = 16;
const isLong = (text: Text): boolean => JSON.stringify(text).length >= leastLength;

const isSilent = ({ type }: Node): boolean =>
  type === 'Identifier' ||
  type === 'ImportDeclaration' ||
  (type.startsWith('TS') && !/^TS(?:As|Satisfies)Expression$/.test(type));

/** Parts of a node in which nothing stands that a person reads. */
const silent = new Set(['id', 'key', 'label', 'params', 'property', 'source', 'test']);

const nothing: Constants = new Map();

const ask = ({ texts }: Parting, text: Text): string => `$texts[${texts.push(text) - 1}]`;

function part(parting: Parting, node: Node, constants: Constants): void {
  if (isSilent(node)) return;
  const value = valueOf(node, constants);
  if (value !== undefined) {
    if (isLong(value)) parting.edits.push([node.start, node.end, ask(parting, value)]);
  } else if (node.type === 'ObjectExpression') partTable(parting, node, constants);
  else if (node.type === 'TemplateLiteral') partTemplate(parting, node, constants);
  // In a function the name of a constant may be that of an argument.
  else partInside(parting, node, node.type.includes('Function') ? nothing : constants);
}

function partInside(parting: Parting, node: Node, constants: Constants): void {
  for (const [name, inside] of Object.entries(node)) {
    if (!silent.has(name)) for (const each of nodesIn(inside)) part(parting, each, constants);
  }
}

/** What a table holds beside its functions is spread into it. */
function partTable(parting: Parting, table: Node, constants: Constants): void {
  const properties = nodesIn(table['properties']);
  const pairs = properties.map((each) => propertyOf(each, constants));
  const held = Object.fromEntries(pairs.filter((pair) => pair !== undefined));
  // Where another table is spread in, the order decides which of two equal names counts.
  const parts = isLong(held) && properties.every(({ type }) => type === 'Property');
  if (parts) parting.edits.push([table.start + 1, table.start + 1, `...${ask(parting, held)},`]);
  properties.forEach((each, i) => {
    if (parts && pairs[i]) parting.edits.push([each.start, endOf(parting, each), '']);
    else partInside(parting, each, constants);
  });
}

/** The end of a property, with the comma after it. */
const endOf = ({ code }: Parting, { end }: Node): number =>
  end + (/^\s*,/.exec(code.slice(end))?.[0].length ?? 0);

function partTemplate(parting: Parting, template: Node, constants: Constants): void {
  for (const quasi of nodesIn(template['quasis'])) {
    const { raw, cooked } = textOf(quasi);
    const start = parting.code.indexOf(raw, quasi.start);
    if (isLong(cooked)) parting.edits.push([start, start + raw.length, `\${${ask(parting, cooked)}}`]);
  }
  for (const each of nodesIn(template['expressions'])) part(parting, each, constants);
}

function edited({ code, edits }: Parting): string {
  const fromLast = [...edits].sort((a, b) => b[0] - a[0] || b[1] - a[1]);
  return fromLast.reduce((left, [start, end, put]) => left.slice(0, start) + put + left.slice(end), code);
}
