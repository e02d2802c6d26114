// What `npm start` does before it serves: on a fresh checkout nothing is installed and nothing is built.
import { installIfMissing } from '../app/install.mjs';

installIfMissing();
await import('../app/build.mjs');
