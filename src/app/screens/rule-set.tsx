import { useLocation } from 'preact-iso';
import { useMemo, useState } from 'preact/hooks';
import type { RulesProblem } from '../../core/check-rules.ts';
import { components, items } from '../../core/items.ts';
import { isCovered, ruleLanguage, type RuleSet } from '../../core/rules.ts';
import { forms } from '../../words/en/forms.ts';
import { componentNames, itemName } from '../../words/en/items.ts';
import { rules as words } from '../../words/en/sheets.ts';
import { useBooks, type Book } from '../data/books.ts';
import { fromPath } from '../data/paths.ts';
import { problemsOf } from '../data/rules-problems.ts';
import { Fold } from '../parts/fold.tsx';
import { Screen } from '../parts/screen.tsx';
import { fits, Search } from '../parts/search.tsx';
import styles from '../parts/forms.module.css';
import { BookScreen } from './book-screen.tsx';
import { Gone } from './gone.tsx';
import { componentOf, RuleCard, RuleProblems, ruleText } from './rule-card.tsx';
import { RulesEdit } from './rules-edit.tsx';

/** One rule set: to be read, or at `…/edit` to be changed. */
export function RuleSetScreen() {
  const { path } = useLocation();
  const books = useBooks('rules');
  const at = fromPath('rules', path);
  if (!books) return <Screen title={words.readingTitle}>{null}</Screen>;
  const book = books.find(({ key }) => key === at?.key);
  if (!book) return <Gone />;
  if (!book.value) return <Screen title={words.readingTitle}>{forms.newer}</Screen>;
  const canEdit = book.own && book.value.language <= ruleLanguage;
  if (at?.rest[0] === 'edit' && canEdit) return <RulesEdit key={book.key} book={book} set={book.value} />;
  return <OneSet book={book} set={book.value} canEdit={canEdit} />;
}

interface OneSetProps {
  readonly book: Book<'rules'>;
  readonly set: RuleSet;
  readonly canEdit: boolean;
}

function OneSet({ book, set, canEdit }: OneSetProps) {
  const [search, setSearch] = useState('');
  const problems = useMemo(() => problemsOf(set), [set]);
  return (
    <BookScreen
      book={book}
      value={set}
      words={words}
      canEdit={canEdit}
      describe={({ name, about = '', rules }) => [name, about, words.count(rules.length)]}
      facts={[
        [words.rulesName, words.count(set.rules.length)],
        [words.notCovered, openUnder(set)],
      ]}
    >
      <RuleProblems problems={problems.filter(({ rule }) => rule === undefined)} />
      <Search label={words.searchRule} text={search} onInput={setSearch} />
      <RuleList set={set} problems={problems} search={search} />
    </BookScreen>
  );
}

/** The items that no rule of the set settles, so that they stay open whatever is found. */
function openUnder(set: RuleSet): string | undefined {
  const open = items.filter(({ id }) => !isCovered(set, id)).map(({ id }) => itemName(id));
  return open.length === 0 ? undefined : open.join(', ');
}

interface RuleListProps {
  readonly set: RuleSet;
  readonly problems: readonly RulesProblem[];
  readonly search: string;
}

/** All rules by part of the machine; while something is looked up, those that fit. */
function RuleList({ set, problems, search }: RuleListProps) {
  const texts = set.rules.map((rule) => ({ rule, text: ruleText(rule), component: componentOf(rule) }));
  const found = texts.filter(({ text }) => fits(text, search));
  const cards = (list: typeof found) => (
    <div class={styles.columns}>
      {list.map(({ rule }) => (
        <RuleCard key={rule.id} rule={rule} problems={problems.filter((each) => each.rule === rule.id)} />
      ))}
    </div>
  );
  if (search.trim() !== '') return found.length === 0 ? <p>{words.noRule}</p> : cards(found);
  return (
    <>
      {components.map((component) => {
        const list = found.filter((each) => each.component === component);
        if (list.length === 0) return null;
        return (
          <Fold key={component} title={componentNames[component].one} line={words.count(list.length)}>
            {cards(list)}
          </Fold>
        );
      })}
    </>
  );
}
