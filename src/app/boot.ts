// A classic script of its own, apart from the app: it must still run when the app's own script is missing.
import { repairWords } from '../words/shell.ts';

/** A slow phone has started long before; after this the page would only stay white. */
const patienceMs = 8000;
const shellCaches = 'sagline-';

const started = (): boolean => (document.getElementById('app')?.childElementCount ?? 0) > 0;

addEventListener(
  'error',
  (event) => {
    if (event.target instanceof HTMLScriptElement) offerRepair();
  },
  true,
);
// The worker's bare page, sent when index.html itself is missing, has no place for the app at all.
addEventListener('DOMContentLoaded', () => void (document.getElementById('app') ?? offerRepair()));
setTimeout(offerRepair, patienceMs);

function offerRepair(): void {
  if (document.readyState === 'loading') {
    addEventListener('DOMContentLoaded', offerRepair, { once: true });
    return;
  }
  if (started() || document.getElementById('repair') !== null) return;
  const box = document.createElement('main');
  box.id = 'repair';
  box.style.cssText =
    'font: 1.25rem/1.5 system-ui, sans-serif; max-width: 32rem; margin: 2rem auto; padding: 0 1rem';
  const title = add(box, 'h1', repairWords.title);
  title.style.lineHeight = '1.2';
  const text = add(box, 'p', repairWords.text);
  text.setAttribute('role', 'status');
  const button = add(box, 'button', repairWords.button);
  button.style.cssText = 'font: inherit; min-height: 64px; padding: 0 1.5rem';
  button.addEventListener('click', () => void repair(text));
  document.body.append(box);
}

function add(parent: HTMLElement, tag: string, text: string): HTMLElement {
  const element = document.createElement(tag);
  element.textContent = text;
  parent.append(element);
  return element;
}

/** Drops worker and shell, never a database, and only once the network has shown that it can bring them back. */
async function repair(status: HTMLElement): Promise<void> {
  status.textContent = repairWords.busy;
  try {
    const answer = await fetch('/sw.js', { cache: 'no-store' });
    if (!answer.ok || answer.headers.get('content-type')?.includes('javascript') !== true) throw new Error();
    for (const registration of await navigator.serviceWorker.getRegistrations())
      await registration.unregister();
    const names = await caches.keys();
    await Promise.all(
      names.filter((name) => name.startsWith(shellCaches)).map((name) => caches.delete(name)),
    );
    location.reload();
  } catch {
    status.textContent = repairWords.offline;
  }
}
