import { render } from 'preact';
import { shellWords } from '../words/shell.ts';
import './styles/reset.css';
import { keepUpToDate } from './update.ts';

const root = document.getElementById('app');
if (root !== null) render(<h1>{shellWords.name}</h1>, root);
void keepUpToDate();
