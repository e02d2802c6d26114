/** How much a piece of work is worth. */
export interface Worth {
  readonly durability: 'strict' | 'relaxed';
  /** Whether the reserve may be given up for it. */
  readonly reserve: boolean;
}

/** Records are the only copy of what somebody saw: on disk before anyone says saved. */
export const records: Worth = { durability: 'strict', reserve: true };
/** Keystrokes must outlive a killed app, not a power cut. */
export const keystrokes: Worth = { durability: 'relaxed', reserve: true };
/** Photo bytes are the only copy, too, but never push out a reading. */
export const photoBytes: Worth = { durability: 'strict', reserve: false };
/** What can be worked out or chosen again. */
export const caches: Worth = { durability: 'relaxed', reserve: false };
