/** What only rental walks and contracts need, as one file that is loaded when the first of it is wanted. */
export const loadRental = () => import('../rental/rental.ts').then(({ rental }) => rental);
