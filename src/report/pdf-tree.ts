/** The roles of our structure tree (ISO 32000-1, 14.8.4). */
export type Role =
  | 'Document'
  | 'H1'
  | 'H2'
  | 'H3'
  | 'P'
  | 'L'
  | 'LI'
  | 'Lbl'
  | 'LBody'
  | 'Table'
  | 'TR'
  | 'TH'
  | 'TD'
  | 'Div'
  | 'Figure'
  | 'Caption';

/** Left, top, right, bottom on a page, in points from its top left corner. */
export type Box = readonly [number, number, number, number];

/** A page, from 0, and a height on it in points from its lower edge. */
export interface Place {
  readonly page: number;
  readonly y: number;
}

/** A node of the structure tree. Its marks say which pieces of which page it is made of, in reading order. */
export interface Element {
  readonly role: Role;
  readonly parent?: Element;
  readonly children: Element[];
  readonly marks: { readonly page: number; readonly id: number }[];
  readonly alt?: string;
  readonly scope?: 'Column' | 'Row';
  /** Of a heading: what the list of headings calls it, and where it stands once it is placed. */
  readonly title?: string;
  place?: Place;
  /** Where a figure stands; set once it is placed. */
  box?: Box;
}

/** The root of a structure tree. */
export const documentElement = (): Element => ({ role: 'Document', children: [], marks: [] });

/** Adds a node behind all others of its parent: reading order is the order of calls. */
export function addElement(
  parent: Element,
  role: Role,
  more: Pick<Element, 'alt' | 'scope' | 'title'> = {},
): Element {
  const element: Element = { role, parent, children: [], marks: [], ...more };
  parent.children.push(element);
  return element;
}
