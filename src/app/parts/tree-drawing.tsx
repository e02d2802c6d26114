import { h, type VNode } from 'preact';
import { entry } from '../../words/entry.ts';
import css from './drawing.module.css';

/** A drawing as data: a tag, its attributes, and the texts and further tags in it. */
export type DrawingTree = readonly [
  tag: string,
  attributes: Readonly<Record<string, string | number>>,
  children: readonly (string | DrawingTree)[],
];

const tags = ['svg', 'title', 'g', 'path', 'rect', 'circle', 'text'];
const attributes = [
  'viewBox',
  'role',
  'class',
  'd',
  'x',
  'y',
  'width',
  'height',
  'rx',
  'cx',
  'cy',
  'r',
  'transform',
  'stroke',
  'stroke-width',
  'opacity',
  'text-anchor',
];

const classes = (names: string): string =>
  names
    .split(' ')
    .map((name) => entry(css, name) ?? '')
    .join(' ');

/** Draws what a drawing is made of, and nothing else that the data might hold. */
export function TreeDrawing({ tree: [tag, given, children] }: { tree: DrawingTree }): VNode | null {
  if (!tags.includes(tag)) return null;
  const kept = Object.entries(given).flatMap(([name, value]) =>
    attributes.includes(name) ? [[name, name === 'class' ? classes(String(value)) : value] as const] : [],
  );
  const inside = children.map((child) => (typeof child === 'string' ? child : TreeDrawing({ tree: child })));
  return h(tag, Object.fromEntries(kept), ...inside);
}
