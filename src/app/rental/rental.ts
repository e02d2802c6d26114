import { ContractScreen } from './contract-form.tsx';
import { startOf } from './lookup.ts';
import { modelOf } from './rental-model.ts';

/** What only rental walks and contracts need, as one file. */
export const rental = { ContractScreen, modelOf, startOf };
