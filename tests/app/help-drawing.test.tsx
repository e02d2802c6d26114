import drawingsUrl from 'virtual:data/drawings';
import { render } from '@testing-library/preact';
import { describe, expect, test } from 'vitest';
import { drawings } from '../../src/app/help/drawings.ts';
import { TreeDrawing, type DrawingTree } from '../../src/app/parts/tree-drawing.tsx';
import { itemById, items } from '../../src/core/items.ts';
import { sagMethods } from '../../src/core/limits.ts';

/** As the build ships them; under test their address holds the data itself. */
const trees = JSON.parse(decodeURIComponent(drawingsUrl.replace(/^data:[^,]*,/, ''))) as Readonly<
  Record<string, DrawingTree>
>;

const ids = Object.keys(drawings);
const drawn = (tree: DrawingTree | undefined): Element => {
  expect(tree).toBeDefined();
  return render(tree ? <TreeDrawing tree={tree} /> : <p />).container;
};

describe('help drawings', () => {
  test.each(ids)('[HD1] the drawing of %s tells in its title what it shows', (id) => {
    const svg = drawn(trees[id]).querySelector('svg');
    expect(svg?.getAttribute('role')).toBe('img');
    expect(svg?.firstElementChild?.tagName.toLowerCase()).toBe('title');
    expect(svg?.firstElementChild?.textContent?.length).toBeGreaterThan(30);
  });

  test('[HD2] every way of measuring sag has a drawing of its own', () => {
    const titles = sagMethods.map((method) => drawn(trees[method]).querySelector('title')?.textContent);
    expect(new Set(titles).size).toBe(sagMethods.length);
    expect(titles).not.toContain(undefined);
  });

  test('[HD3] every measured item has a drawing', () => {
    const measured = items.filter(({ ask }) => ask.kind !== 'finding' && ask.kind !== 'sag');
    const bare = measured.filter(({ id }) => !trees[id]).map(({ id }) => id);
    // The pad is read like the lug beside it and needs no drawing.
    expect(bare).toEqual(['pad-height']);
  });

  test('[HD4] drawings belong to an item, a sag method, the front or a raised machine', () => {
    const known = (id: string): boolean =>
      itemById(id) !== undefined ||
      sagMethods.some((method) => method === id) ||
      id === 'front' ||
      id === 'raised';
    expect(Object.keys(trees).filter((id) => !known(id))).toEqual([]);
  });

  test('[HD5] no coordinate is missing', () => {
    for (const id of ids) expect(drawn(trees[id]).innerHTML, id).not.toMatch(/NaN|undefined/);
  });

  test.each(ids)('[HD6] the drawing of %s is shipped as its component draws it', (id) => {
    const Component = drawings[id];
    const component = render(Component ? <Component /> : <p />).container;
    expect(component.querySelectorAll('path[class]').length).toBeGreaterThan(0);
    expect(drawn(trees[id]).innerHTML).toBe(component.innerHTML);
  });

  test.each<[string, DrawingTree]>([
    ['a script', ['svg', {}, [['script', {}, ['alert(1)']]]]],
    ['a picture from elsewhere', ['svg', {}, [['image', { href: 'https://example.org/a.png' }, []]]]],
    ['a handler', ['svg', { onload: 'alert(1)' }, []]],
    ['markup', ['svg', { dangerouslySetInnerHTML: '<b>' }, []]],
    ['a class of another sheet', ['svg', { class: 'constructor' }, []]],
  ])('[HD7] %s in a drawing is left out', (_what, tree) => {
    expect(drawn(tree).innerHTML.replace(' class=""', '')).toBe('<svg></svg>');
  });
});
