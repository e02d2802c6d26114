import type { Timers } from '../../src/storage/opening.ts';

export const realTimers: Timers = {
  after: (ms, callback) => {
    const timer = setTimeout(callback, ms);
    return () => clearTimeout(timer);
  },
};
