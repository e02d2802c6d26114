import type { MachineKind, Shape } from '../../core/machine.ts';
import { startingSheetFor } from '../../reference/sheets.ts';
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
export function sheetOptions(
  books: readonly Book<'limits'>[] | undefined,
  fits: string | undefined,
): readonly Option<string>[] {
  const name = books?.find(({ key }) => key === fits)?.value?.name;
  const label = name === undefined ? machineHints.fittingNone : machineHints.fitting(name);
  return [{ value: fitting, label }, { value: '', label: machineHints.noSheet }, ...bookOptions(books)];
}

/** What to say below the choice of a sheet. */
export function sheetHint(
  chosen: string,
  fits: string | undefined,
  shape: Shape | undefined,
  massKg: number | undefined,
): string {
  if (chosen !== fitting || fits !== undefined || !shape) return machineForm.sheetHint;
  return massKg === undefined ? machineHints.fittingNeedsMass : machineHints.fittingNot;
}
