import { useLocation } from 'preact-iso';
import { useMemo, useState } from 'preact/hooks';
import type { Rule, RuleSet } from '../../core/rules.ts';
import { common } from '../../words/en/common.ts';
import { forms } from '../../words/en/forms.ts';
import { itemName } from '../../words/en/items.ts';
import { rules as words } from '../../words/en/sheets.ts';
import { bookDraftKey, saveBook } from '../actions/books.ts';
import { dropDraft } from '../actions/saved.ts';

import type { Book } from '../data/books.ts';
import { tell } from '../data/notice.ts';
import { bookPath } from '../data/paths.ts';
import { isTooLarge } from '../data/record-size.ts';
import { opensWithout, ruleSetOf, rulesForm, type RuleEdit, type RulesFaults } from '../data/rules-form.ts';
import { problemsOf } from '../data/rules-problems.ts';
import { notSavedLine } from '../data/saving.ts';
import { showFirstFault } from '../data/show-fault.ts';
import { useDraft } from '../data/use-draft.ts';
import { Button, ButtonLink } from '../parts/button.tsx';
import { Field } from '../parts/field.tsx';
import { Screen, Section } from '../parts/screen.tsx';
import { fits, Search } from '../parts/search.tsx';
import { RuleProblems, ruleText } from './rule-card.tsx';
import { RuleFold } from './rule-fields.tsx';

/** Changes one of the phone's own rule sets. */
export function RulesEdit({ book, set }: { book: Book<'rules'>; set: RuleSet }) {
  const { route } = useLocation();
  const [start] = useState(() => rulesForm(set, book.stamp));
  const draftKey = bookDraftKey(book.key);
  const [form, setForm] = useDraft(draftKey, start);
  const [faults, setFaults] = useState<RulesFaults>([]);
  const [search, setSearch] = useState('');
  const made = useMemo(() => ruleSetOf(form, set), [form, set]);
  const problems = useMemo(() => (made.ok ? problemsOf(made.value) : []), [made]);
  // What a removed rule leaves open is said and allowed; what makes no sense is not.
  const wrong = problems.filter(({ warns, kind }) => !warns && kind !== 'covers-unknown-rule');
  const refuse = (why: RulesFaults, line: string): void => {
    setFaults(why);
    setSearch('');
    tell(line);
    showFirstFault();
  };
  const save = async (): Promise<void> => {
    if (!made.ok) return refuse(made.error, forms.mend);
    if (wrong.length > 0)
      return refuse(
        wrong.flatMap(({ rule }) => rule ?? []),
        forms.mend,
      );
    if (isTooLarge(made.value)) return refuse([], words.tooLarge);
    const saved = await saveBook(book.key, made.value, draftKey);
    tell(saved.ok ? words.saved : notSavedLine(saved.error));
    if (saved.ok) route(bookPath(book.key), true);
  };
  const change = (id: string, edit: RuleEdit): void =>
    setForm({ ...form, edits: { ...form.edits, [id]: { ...form.edits[id], ...edit } } });
  const remove = ({ id }: Rule): void => {
    setForm({ ...form, removed: [...form.removed, id] });
    const items = opensWithout(set, id).map(itemName);
    tell(items.length === 0 ? words.ruleRemoved : words.nowOpen(items.join(', ')), () => setForm(form));
  };
  const drop = (): void => {
    setForm(rulesForm(set, book.stamp));
    void dropDraft(draftKey);
    tell(forms.dropped, () => setForm(form));
  };
  const shown = set.rules.filter(
    (rule) => !form.removed.includes(rule.id) && (faults.includes(rule.id) || fits(ruleText(rule), search)),
  );
  return (
    <Screen
      title={words.editTitle}
      bar={
        <>
          <ButtonLink href={bookPath(book.key)}>{common.back}</ButtonLink>
          <Button look="main" onTap={() => void save()}>
            {words.save}
          </Button>
        </>
      }
    >
      {form.base !== book.stamp && <p role="status">{forms.changedElsewhere}</p>}
      <Field
        label={words.name}
        value={form.name}
        fault={form.name.trim() === '' ? words.nameMissing : undefined}
        onInput={(name) => setForm({ ...form, name })}
      />
      <Field
        label={words.about}
        lines={3}
        value={form.about}
        onInput={(about) => setForm({ ...form, about })}
      />
      <RuleProblems problems={problems.filter(({ rule }) => rule === undefined)} />
      <Section title={words.count(set.rules.length - form.removed.length)}>
        <Search label={words.searchRule} text={search} onInput={setSearch} />
        {shown.length === 0 && <p>{words.noRule}</p>}
        {shown.map((rule) => (
          <RuleFold
            key={rule.id}
            rule={rule}
            edit={form.edits[rule.id]}
            asked={faults.includes(rule.id)}
            problems={problems.filter((each) => each.rule === rule.id)}
            opens={opensWithout(set, rule.id)}
            change={(edit) => change(rule.id, edit)}
            remove={() => remove(rule)}
          />
        ))}
      </Section>
      <Button look="plain" onTap={drop}>
        {forms.drop}
      </Button>
    </Screen>
  );
}
