import { signal } from '@preact/signals';
import type { PlacedReading } from '../../core/states.ts';
import type { Step } from '../../core/steps.ts';

/** What was last saved, so that the next screen can show what came of it and offer to undo it. */
export interface Receipt {
  readonly walk: string;
  readonly step: Step;
  readonly made: readonly Omit<PlacedReading, 'reading'>[];
  /** What stood there before, to put back. */
  readonly before: readonly PlacedReading[];
}

export const receipt = signal<Receipt | undefined>(undefined);
