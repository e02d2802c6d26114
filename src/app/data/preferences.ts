import { signal, type ReadonlySignal } from '@preact/signals';
import type { Preferences } from '../../words/format.ts';
import { lengthUnits, type LengthUnit } from '../../core/quantity.ts';
import { store } from './phone.ts';

const imperial = new Set(['en-US', 'en-LR', 'my-MM']);

function fromBrowser(): Preferences {
  const locale = navigator.language || 'en';
  const inches = imperial.has(locale);
  return { locale, depth: inches ? 'in/32' : 'mm', length: inches ? 'in' : 'mm', mass: inches ? 'lb' : 'kg' };
}

const chosen = signal<Preferences>(fromBrowser());

/** Units as this person reads them. */
export const preferences: ReadonlySignal<Preferences> = chosen;

const isUnit = (value: unknown): value is LengthUnit => lengthUnits.some((unit) => unit === value);

/** Loads the person's units; what is not stored or not understood stays as the browser suggests. */
export async function loadPreferences(): Promise<void> {
  const stored = await store.preferences.get('units');
  if (!stored.ok || typeof stored.value !== 'object' || stored.value === null) return;
  const { depth, length, mass } = stored.value as Record<string, unknown>;
  chosen.value = {
    ...chosen.value,
    ...(isUnit(depth) && { depth }),
    ...(isUnit(length) && { length }),
    ...((mass === 'kg' || mass === 'lb') && { mass }),
  };
}

/** Changes units at once and keeps them. */
export async function savePreferences(change: Partial<Omit<Preferences, 'locale'>>): Promise<void> {
  chosen.value = { ...chosen.value, ...change };
  const { depth, length, mass } = chosen.value;
  await store.preferences.put('units', { depth, length, mass });
}
