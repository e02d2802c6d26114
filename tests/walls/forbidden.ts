import {
  found,
  isNode,
  nameOf,
  walkSource,
  type Finding,
  type Node,
  type SourceFile,
} from './source-tree.ts';

const pureRooms = ['src/core/', 'src/reference/', 'src/protocol/'];
const impureNames = [
  'Date',
  'performance',
  'crypto',
  'setTimeout',
  'setInterval',
  'queueMicrotask',
  'process',
];
const markupDoors = [
  'innerHTML',
  'outerHTML',
  'insertAdjacentHTML',
  'dangerouslySetInnerHTML',
  'srcdoc',
  'createContextualFragment',
];

/** [RM2] Core, reference and protocol know no clock, no chance and no machine: these come in as arguments. */
export function checkPurity(file: SourceFile): Finding[] {
  if (!pureRooms.some((room) => file.path.startsWith(room))) return [];
  return collect(file, 'RM2', (node, parents) => {
    const parent = parents.at(-1);
    if (isMember(node, 'Math', 'random')) return 'Math.random';
    if (isNode(node, 'MetaProperty')) return 'import.meta';
    if (!isNode(node, 'Identifier') || !impureNames.includes(String(node['name']))) return undefined;
    const isName =
      parent?.type.startsWith('TS') ||
      parent?.['key'] === node ||
      (parent?.['property'] === node && !parent['computed']);
    return isName ? undefined : String(node['name']);
  });
}

/** [RM4] A file is imported where it is: nothing is exported onward, nothing is called index, nothing is default. */
export function checkBarrels(file: SourceFile): Finding[] {
  const findings = collect(file, 'RM4', (node) => {
    if (isNode(node, 'ExportAllDeclaration')) return 'export *';
    if (isNode(node, 'ExportNamedDeclaration') && node['source'] !== null) return 'export … from';
    if (isNode(node, 'ExportDefaultDeclaration') && !file.path.endsWith('.config.ts'))
      return 'export default';
    return undefined;
  });
  const isIndex = /\/index\.tsx?$/.test(file.path);
  return isIndex ? [...findings, { rule: 'RM4', at: file.path, what: 'a file called index' }] : findings;
}

/** [RM5] Text never becomes markup or code. */
export function checkMarkup(file: SourceFile): Finding[] {
  return collect(file, 'RM5', (node) => {
    const name =
      isNode(node, 'Identifier') || isNode(node, 'JSXIdentifier') ? String(node['name']) : undefined;
    if (name !== undefined && markupDoors.includes(name)) return name;
    const callee =
      isNode(node, 'CallExpression') || isNode(node, 'NewExpression') ? node['callee'] : undefined;
    if (isNode(callee, 'Identifier') && ['eval', 'Function'].includes(nameOf(callee) ?? ''))
      return nameOf(callee);
    if (isNode(callee, 'MemberExpression') && isMember(callee, 'document', 'write')) return 'document.write';
    return undefined;
  });
}

/**
 * [RM6] Days are written, never guessed. A date made from text means another moment on another engine or in another
 * zone, and the start of an ISO string is yesterday for half of the world: only `new Date()` and a number whose name
 * ends in Ms are read.
 */
export function checkDates(file: SourceFile): Finding[] {
  return collect(file, 'RM6', (node) => {
    if (isMember(node, 'Date', 'parse')) return 'Date.parse';
    if (isNode(node, 'NewExpression') && nameOf(node['callee']) === 'Date') {
      const [only, ...rest] = node['arguments'] as Node[];
      const isMoment = only === undefined || rest.length > 0 || /ms$/i.test(nameOf(only) ?? '');
      return isMoment ? undefined : 'new Date(…) of something that is not named …Ms';
    }
    const cut =
      isNode(node, 'MemberExpression') && /^(?:slice|substring|substr|split)$/.test(nameOf(node) ?? '');
    const target = cut && isNode(node['object'], 'CallExpression') ? node['object']['callee'] : undefined;
    return nameOf(target) === 'toISOString' ? 'a cut toISOString()' : undefined;
  });
}

const placesOnOneMachine = /(?<![\w.:/])\/(?:work|tmp|home|root|Users)\/\w|[A-Z]:\\Users|registry\.npm/;

/** [RM7] No file knows where it lay on the machine it was written on. */
export function checkPlaces({ path, text }: SourceFile): Finding[] {
  const lines = text.split('\n');
  return lines.flatMap((line, index) => {
    const match = placesOnOneMachine.exec(line);
    return match === null ? [] : [{ rule: 'RM7', at: `${path}:${index + 1}`, what: match[0] }];
  });
}

/** The database belongs to one room. */
export function checkDatabaseDoor(file: SourceFile): Finding[] {
  if (!file.path.startsWith('src/') || file.path.startsWith('src/storage/')) return [];
  return collect(file, 'RM8', (node) =>
    isNode(node, 'Identifier') && node['name'] === 'indexedDB' ? 'indexedDB' : undefined,
  );
}

function collect(
  file: SourceFile,
  rule: string,
  judge: (node: Node, parents: readonly Node[]) => string | undefined,
): Finding[] {
  const findings: Finding[] = [];
  walkSource(file, (node, parents) => {
    const what = judge(node, parents);
    if (what !== undefined) findings.push(found(rule, file, node, what));
  });
  return findings;
}

function isMember(node: Node, object: string, property: string): boolean {
  return isNode(node, 'MemberExpression') && nameOf(node['object']) === object && nameOf(node) === property;
}
