import type { LengthUnit } from '../../core/quantity.ts';
import type { ToolUncertainty } from '../../core/sizes.ts';
import { isTaped, sizeOf } from '../../words/size-of.ts';
import { formatter } from './format.ts';
import { preferences } from './preferences.ts';
import type { WalkModel } from './walk-model.ts';

const usual: Readonly<Record<string, string>> = {
  'lug-depth': 'depth-gauge',
  'pad-height': 'rule',
  grouser: 'rule',
  'link-height': 'depth-gauge',
  pitch: 'tape',
  'bushing-od': 'caliper',
  'idler-tread': 'depth-gauge',
  'roller-tread': 'rule',
  sag: 'straightedge',
};

/** The tool that an item is usually read with, until the person says otherwise. */
export const usualTool = (itemId: string): string =>
  itemId === 'lug-depth' && preferences.value.depth === 'in/32' ? 'tread-gauge' : (usual[itemId] ?? 'rule');

/** Standard uncertainties of the tools that come with the app. */
export const toolUncertaintyOf = (model: WalkModel): ToolUncertainty => model.assembled.input.tools ?? {};

/** The unit in which this person reads an item: depths by gauge, lengths by tape or caliper. */
export const unitFor = (itemId: string): LengthUnit =>
  isTaped(itemId) ? preferences.value.length : preferences.value.depth;

/** A size of an item in that unit. */
export const sizeText = (itemId: string, mm: number): string => sizeOf(itemId, mm, formatter.value);
