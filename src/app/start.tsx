import { render } from 'preact';
import './styles/reset.css';
import './styles/variables.css';
import { App } from './app.tsx';
import { store } from './data/phone.ts';
import { loadPreferences } from './data/preferences.ts';
import { silenceEchoes } from './parts/echo.ts';
import { Stopped } from './screens/stopped.tsx';
import { keepUpToDate } from './update.ts';

/** Without https there are no worker and no locks; in a frame the browser keeps the data apart. */
const stopped = isSecureContext ? (self === top ? undefined : 'framed') : 'insecure';

/** Long after everything that a person waits for. */
const quietAfterMs = 20_000;

/** Puts the app on the page. */
export function start(): void {
  silenceEchoes(document);
  const root = document.getElementById('app');
  if (root !== null) render(stopped ? <Stopped state={stopped} /> : <App />, root);
  if (stopped === undefined) {
    void loadPreferences();
    void keepUpToDate();
    setTimeout(() => void store.photos.sweep(), quietAfterMs);
  }
}
