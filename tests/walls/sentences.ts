import {
  found,
  isNode,
  nameOf,
  walkSource,
  type Finding,
  type Node,
  type SourceFile,
} from './source-tree.ts';

/** Two words with a space between them; § stands for a value put into a template. */
const sentence = /\p{L}{2,}[\p{P}]?\s+(?:[\p{L}(„“‘]|§)|§[\p{P}]?\s+\p{L}{2,}/u;

/** What matchMedia is asked, as in (display-mode: standalone). */
const mediaQuery = /^\([a-z-]+: [\w-]+\)$/;

/** Attributes whose text a person reads or hears. */
const spoken = [
  'alt',
  'aria-description',
  'aria-label',
  'aria-roledescription',
  'aria-valuetext',
  'label',
  'placeholder',
  'title',
];

/** Bugs speak to developers: what assert() and Error say never reaches a screen. */
const speaksToDevelopers = ['assert', 'Error', 'TypeError', 'RangeError', 'DOMException'];

/**
 * Texts with a space that nobody reads as a sentence. One line each, exact, by file; one that is no longer met is a
 * fault as well.
 */
export const allowedTexts: Readonly<Record<string, readonly string[]>> = {
  'src/app/boot.ts': [
    'font: inherit; min-height: 64px; padding: 0 1.5rem',
    'font: 1.25rem/1.5 system-ui, sans-serif; max-width: 32rem; margin: 2rem auto; padding: 0 1rem',
  ],
  'service-worker/navigation.ts': ['<!doctype html><meta charset="utf-8" /><script src="/boot.js"></script>'],
  'src/server/security-headers.ts': [
    "img-src 'self' blob:",
    'trusted-types sagline-worker sagline-photo-worker',
  ],
  'src/server/server.ts': [
    'public, max-age=31536000, immutable, no-transform',
    'no-cache, no-transform',
    'text/plain; charset=utf-8',
  ],
};

/** The room of words, the sources and names in reference (data, kept as written), tests and build files. */
const free =
  /^(?:src\/words|src\/reference|tests)\/|^src\/app\/(?:catalogue|data-files|literals|part-words)\.ts$|\.config\.ts$/;

/** [RM3] Every text that a person reads lives in src/words. */
export function checkSentences(file: SourceFile): Finding[] {
  if (free.test(file.path)) return [];
  const findings: Finding[] = [];
  walkSource(file, (node, parents) => {
    const text = readableText(node, parents);
    if (text !== undefined && !allowedTexts[file.path]?.includes(text))
      findings.push(found('RM3', file, node, text));
  });
  return findings;
}

function readableText(node: Node, parents: readonly Node[]): string | undefined {
  const parent = parents.at(-1);
  if (isNode(node, 'JSXText'))
    return /\p{L}/u.test(String(node['value'])) ? String(node['value']).trim() : undefined;
  const text = textOf(node);
  if (text === undefined || isForDevelopers(parents) || namesQuery(node, parent)) return undefined;
  if (parent?.type === 'JSXAttribute') {
    const isSpoken = spoken.includes(nameOf(parent['name']) ?? '');
    return isSpoken && /\p{L}/u.test(text) ? text : undefined;
  }
  if (parent?.type === 'TSLiteralType' || parent?.type === 'TaggedTemplateExpression') return undefined;
  return sentence.test(text) && !mediaQuery.test(text) ? text : undefined;
}

function textOf(node: Node): string | undefined {
  if (isNode(node, 'Literal') && typeof node['value'] === 'string') return node['value'];
  if (!isNode(node, 'TemplateLiteral')) return undefined;
  const parts = node['quasis'] as readonly { value: { cooked: string } }[];
  return parts.map(({ value }) => value.cooked).join('§');
}

/** The first argument of useLive only tells one question from another. */
function namesQuery(node: Node, parent: Node | undefined): boolean {
  if (parent?.type !== 'CallExpression' || nameOf(parent['callee']) !== 'useLive') return false;
  return (parent['arguments'] as readonly Node[])[0] === node;
}

function isForDevelopers(parents: readonly Node[]): boolean {
  return parents.some((parent) => {
    const isCall = isNode(parent, 'CallExpression') || isNode(parent, 'NewExpression');
    return isCall && speaksToDevelopers.includes(nameOf(parent['callee']) ?? '');
  });
}

/** Allowed texts that their file no longer holds. */
export function staleAllowances(files: readonly SourceFile[]): string[] {
  return Object.entries(allowedTexts).flatMap(([path, texts]) => {
    const held = files.find((file) => file.path === path)?.text ?? '';
    return texts.filter((text) => !held.includes(text)).map((text) => `${path}: ${text}`);
  });
}
