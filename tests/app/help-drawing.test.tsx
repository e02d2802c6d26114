import { render } from '@testing-library/preact';
import { describe, expect, test } from 'vitest';
import { drawingIds, helpDrawing } from '../../src/app/help/help-drawing.ts';
import { itemById, items } from '../../src/core/items.ts';
import { sagMethods } from '../../src/core/limits.ts';

const drawn = (id: string): Element => {
  const Drawing = helpDrawing(id);
  return render(Drawing ? <Drawing /> : <p />).container;
};

describe('help drawings', () => {
  test.each(drawingIds)('[HD1] the drawing of %s tells in its title what it shows', (id) => {
    const svg = drawn(id).querySelector('svg');
    expect(svg?.getAttribute('role')).toBe('img');
    expect(svg?.firstElementChild?.tagName.toLowerCase()).toBe('title');
    expect(svg?.firstElementChild?.textContent?.length).toBeGreaterThan(30);
  });

  test('[HD2] every way of measuring sag has a drawing of its own', () => {
    const titles = sagMethods.map((method) => drawn(method).querySelector('title')?.textContent);
    expect(new Set(titles).size).toBe(sagMethods.length);
    expect(titles).not.toContain(undefined);
  });

  test('[HD3] every measured item has a drawing', () => {
    const measured = items.filter(({ ask }) => ask.kind !== 'finding' && ask.kind !== 'sag');
    const bare = measured.filter(({ id }) => !helpDrawing(id)).map(({ id }) => id);
    // The pad is read like the lug beside it and needs no drawing.
    expect(bare).toEqual(['pad-height']);
  });

  test('[HD4] drawings belong to an item, a sag method, the front or a raised machine', () => {
    const known = (id: string): boolean =>
      itemById(id) !== undefined ||
      sagMethods.some((method) => method === id) ||
      id === 'front' ||
      id === 'raised';
    expect(drawingIds.filter((id) => !known(id))).toEqual([]);
    expect(helpDrawing('of-tomorrow')).toBeUndefined();
  });

  test('[HD5] no coordinate is missing', () => {
    for (const id of drawingIds) expect(drawn(id).innerHTML, id).not.toMatch(/NaN|undefined/);
  });
});
