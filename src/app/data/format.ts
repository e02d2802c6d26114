import { computed, type ReadonlySignal } from '@preact/signals';
import type { Formatter } from '../../words/format.ts';
import { makeFormatter } from '../../words/formatter.ts';
import { preferences } from './preferences.ts';

/** Numbers, units and names for this person; read `.value` so that a screen follows a changed unit. */
export const formatter: ReadonlySignal<Formatter> = computed(() => makeFormatter(preferences.value));
