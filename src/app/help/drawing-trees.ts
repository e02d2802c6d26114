import type { FunctionComponent, VNode } from 'preact';
import type { DrawingTree } from '../parts/tree-drawing.tsx';
import { drawings } from './drawings.ts';

/** What a component draws, its own components called; only pure ones can be drawn ahead of time. */
function treesOf(child: unknown): readonly (string | DrawingTree)[] {
  if (Array.isArray(child)) return child.flatMap(treesOf);
  if (typeof child === 'string' || typeof child === 'number') return [String(child)];
  if (typeof child !== 'object' || child === null) return [];
  const { type, props } = child as VNode<{ children?: unknown }>;
  if (typeof type !== 'string') return treesOf((type as FunctionComponent)(props));
  const { children, ...attributes } = props;
  return [[type, attributes, treesOf(children)]];
}

/** Every drawing as the build ships it, by the id of what it explains. */
export const drawingTrees = (): Readonly<Record<string, DrawingTree>> =>
  Object.fromEntries(Object.entries(drawings).map(([id, draw]) => [id, treesOf(draw({}))[0] as DrawingTree]));
