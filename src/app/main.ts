import { $texts, address } from 'virtual:catalogue';

/** Reads the sentences before any module that shows them; without them boot.ts offers the repair. */
async function begin(): Promise<void> {
  const answer = await fetch(address);
  Object.assign($texts, await answer.json());
  const { start } = await import('./start.tsx');
  start();
}

void begin();
