import type { MachineKind, Shape } from '../../core/machine.ts';
import { startingSheetFor } from '../../reference/sheet-classes.ts';
import { machineHints, machineForm } from '../../words/en/machine.ts';
import type { Option } from '../parts/choices.tsx';
import { nameOf, type Book, type BookKind } from './books.ts';
import { fitting } from './machine-form.ts';

/** The starting sheet that fits what is known of the machine so far. */
export const fittingSheet = (kind: string, shape: Shape | undefined, massKg: number | undefined) =>
  shape && startingSheetFor(kind as MachineKind, shape, massKg);

/** Books as choices, this phone's own first. */
export const bookOptions = (books: readonly Book<BookKind>[] | undefined): readonly Option<string>[] =>
  (books ?? []).flatMap((book) => (book.value ? [{ value: book.key, label: nameOf(book) }] : []));

/** The choices for the sheet of a machine; the first is whatever fits it. */
export const sheetOptions = (books: readonly Book<'limits'>[] | undefined): readonly Option<string>[] => [
  { value: fitting, label: machineHints.fitting },
  { value: '', label: machineHints.noSheet },
  ...bookOptions(books),
];

/** What to say below the choice of a sheet: the whole name of the one that fits, or what is missing for it. */
export function sheetHint(
  chosen: string,
  fits: Book<'limits'> | undefined,
  shape: Shape | undefined,
  massKg: number | undefined,
): string {
  if (chosen !== fitting || !shape) return machineForm.sheetHint;
  if (fits) return machineHints.fits(nameOf(fits));
  return massKg === undefined ? machineHints.fittingNeedsMass : machineHints.fittingNot;
}
