import { posix } from 'node:path';
import { found, isNode, nameOf, walkSource, type Finding, type SourceFile } from './source-tree.ts';

/** Which rooms a room may import, and which packages (DEVELOPERS.md, rooms). */
export type Room = { readonly rooms: readonly string[]; readonly packages: readonly string[] };

export const rooms: Readonly<Record<string, Room>> = {
  'src/core': { rooms: [], packages: ['zod/mini'] },
  'src/reference': { rooms: ['src/core'], packages: [] },
  'src/words': { rooms: ['src/core'], packages: [] },
  'src/seal': { rooms: ['src/core'], packages: ['zod/mini'] },
  'src/files': { rooms: ['src/core', 'src/words', 'src/seal'], packages: ['zod/mini', 'fflate'] },
  'src/report': {
    rooms: ['src/core', 'src/words', 'src/seal'],
    packages: ['zod/mini', '@cantoo/pdf-lib', 'qr'],
  },
  'src/protocol': { rooms: ['src/core'], packages: ['zod/mini'] },
  'src/storage': { rooms: ['src/core'], packages: ['idb', 'zod/mini'] },
  'src/app': {
    rooms: [
      'src/core',
      'src/reference',
      'src/words',
      'src/seal',
      'src/files',
      'src/report',
      'src/protocol',
      'src/storage',
    ],
    packages: ['preact', 'preact/hooks', '@preact/signals', 'preact-iso', 'zod/mini', 'virtual:'],
  },
  'src/server': {
    rooms: ['src/core', 'src/reference', 'src/words', 'src/files', 'src/protocol'],
    packages: ['node:', 'fastify', '@fastify/static', 'zod/mini'],
  },
  'src/cli': {
    rooms: ['src/core', 'src/reference', 'src/words', 'src/seal', 'src/files'],
    packages: ['node:', 'zod/mini'],
  },
  'service-worker': { rooms: ['src/protocol', 'src/storage'], packages: ['workbox-'] },
};

const importing = ['ImportDeclaration', 'ExportNamedDeclaration', 'ExportAllDeclaration', 'ImportExpression'];

/** [RM1] A room imports only the rooms and packages of its row. */
export function checkImports(file: SourceFile): Finding[] {
  const findings: Finding[] = [];
  const own = roomOf(file.path);
  const row = rooms[own];
  if (row === undefined || isBuildFile(file.path)) return [];
  walkSource(file, (node) => {
    const wanted = importing.includes(node.type) ? nameOf(node['source']) : undefined;
    if (wanted === undefined) return;
    if (!isAllowed(wanted, file.path, own, row))
      findings.push(found('RM1', file, node, `${own} imports ${wanted}`));
    if (wanted.startsWith('zod') && !isOneNamespace(node['specifiers'])) {
      findings.push(found('RM1', file, node, "zod in another form than import * as z from 'zod/mini'"));
    }
  });
  return findings;
}

function isAllowed(wanted: string, path: string, own: string, row: Room): boolean {
  if (!wanted.startsWith('.')) {
    const inFamily = (name: string): boolean => /[:-]$/.test(name) && wanted.startsWith(name);
    return row.packages.some((name) => name === wanted || inFamily(name));
  }
  const target = roomOf(posix.join(posix.dirname(path), wanted));
  return target === own || row.rooms.includes(target);
}

function isOneNamespace(specifiers: unknown): boolean {
  return (
    Array.isArray(specifiers) && specifiers.length === 1 && isNode(specifiers[0], 'ImportNamespaceSpecifier')
  );
}

function roomOf(path: string): string {
  return Object.keys(rooms).find((room) => path.startsWith(`${room}/`)) ?? posix.dirname(path);
}

/** What only the build runs lives beside the app, with rights of its own. */
function isBuildFile(path: string): boolean {
  return /^src\/app\/(?:catalogue|data-files|literals|part-words|vite\.config)\.ts$/.test(path);
}
