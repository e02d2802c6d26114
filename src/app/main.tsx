import { render } from 'preact';

const root = document.getElementById('app');
if (root !== null) render(<h1>Sagline</h1>, root);
