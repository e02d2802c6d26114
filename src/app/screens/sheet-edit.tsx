import { useLocation } from 'preact-iso';
import { useMemo, useState } from 'preact/hooks';
import { checkSheet, type SheetProblem } from '../../core/check-sheet.ts';
import { makeKey, type Id } from '../../core/keys.ts';
import { common } from '../../words/en/common.ts';
import { forms } from '../../words/en/forms.ts';
import { sheets as words } from '../../words/en/sheets.ts';
import { bookDraftKey, saveBook } from '../actions/books.ts';
import { dropDraft } from '../actions/saved.ts';

import type { Book } from '../data/books.ts';
import { tell } from '../data/notice.ts';
import { bookPath } from '../data/paths.ts';
import { isTooLarge } from '../data/record-size.ts';
import { notSavedLine } from '../data/saving.ts';
import { sheetOf, type SheetFaults } from '../data/sheet-form.ts';
import { sheetForm } from '../data/sheet-rows.ts';
import { showFirstFault } from '../data/show-fault.ts';
import { useDraft } from '../data/use-draft.ts';
import { Button, ButtonLink } from '../parts/button.tsx';
import { Screen } from '../parts/screen.tsx';
import { SheetFields } from './sheet-fields.tsx';

interface SheetEditProps {
  /** Absent for a new sheet. */
  readonly book: Book<'limits'> | undefined;
  /** The rule set that a new sheet starts with. */
  readonly rules: string;
}

/** Changes one of the phone's own sheets, or makes a new one. */
export function SheetEdit({ book, rules }: SheetEditProps) {
  const { route } = useLocation();
  const [start] = useState(() => sheetForm(book?.value, book?.stamp, rules));
  const draftKey = bookDraftKey(book?.key);
  const [form, setForm] = useDraft(draftKey, start);
  const [faults, setFaults] = useState<SheetFaults>([]);
  const [isAsked, setAsked] = useState(false);
  const before = book?.value;
  const made = useMemo(() => sheetOf(form, before), [form, before]);
  const problems: readonly SheetProblem[] = made.ok ? checkSheet(made.value) : [];
  const wrong = problems.filter(({ warns }) => !warns);
  const save = async (): Promise<void> => {
    setAsked(true);
    if (!made.ok || wrong.length > 0) {
      setFaults(made.ok ? wrong.flatMap(({ at }) => form[at.list][at.index]?.id ?? []) : made.error);
      tell(forms.mend);
      showFirstFault();
      return;
    }
    if (isTooLarge(made.value)) {
      tell(words.tooLarge);
      return;
    }
    const key = book?.key ?? makeKey({ kind: 'limits', id: form.id as Id });
    const saved = await saveBook(key, made.value, draftKey);
    tell(saved.ok ? words.saved : notSavedLine(saved.error));
    if (saved.ok) route(bookPath(key), true);
  };
  const drop = (): void => {
    const kept = form;
    setForm(sheetForm(book?.value, book?.stamp, rules));
    void dropDraft(draftKey);
    tell(forms.dropped, () => setForm(kept));
  };
  return (
    <Screen
      title={book ? words.editTitle : words.add}
      bar={
        <>
          <ButtonLink href={book ? bookPath(book.key) : '/sheets'}>{common.back}</ButtonLink>
          <Button look="main" onTap={() => void save()}>
            {words.save}
          </Button>
        </>
      }
    >
      {form.base !== book?.stamp && <p role="status">{forms.changedElsewhere}</p>}
      <SheetFields {...{ form, problems, setForm }} faults={isAsked ? faults : []} />
      {form !== start && (
        <Button look="plain" onTap={drop}>
          {forms.drop}
        </Button>
      )}
    </Screen>
  );
}
