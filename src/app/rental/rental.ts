import { startOf } from './lookup.ts';
import { modelOf } from './rental-model.ts';

/** What only rental walks and contracts need, as one file. */
export const rental = { modelOf, startOf };
