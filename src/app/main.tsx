import { render } from 'preact';
import './styles/reset.css';
import './styles/variables.css';
import { App } from './app.tsx';
import { loadPreferences } from './data/format.ts';
import { keepUpToDate } from './update.ts';

const root = document.getElementById('app');
if (root !== null) render(<App />, root);
void loadPreferences();
void keepUpToDate();
