import { useLocation } from 'preact-iso';
import type { PriceList, Rates } from '../../core/costs.ts';
import { rateNames } from '../../core/costs.ts';
import { isJobKind, jobTraits } from '../../core/job-kinds.ts';
import { jobWords } from '../../words/en/ahead.ts';
import { costs as words, rateWords } from '../../words/en/costs.ts';
import { forms } from '../../words/en/forms.ts';
import { useBooks, type Book } from '../data/books.ts';
import { formatter } from '../data/format.ts';
import { fromPath } from '../data/paths.ts';
import { Screen } from '../parts/screen.tsx';
import { SourceLine } from '../parts/source-line.tsx';
import styles from '../parts/forms.module.css';
import { BookScreen } from './book-screen.tsx';
import { CostsEdit } from './costs-edit.tsx';
import { Gone } from './gone.tsx';

/** One price list: to be read, or at `…/edit` to be changed. */
export function PricesScreen() {
  const { path } = useLocation();
  const books = useBooks('price');
  const at = fromPath('price', path);
  if (!books) return <Screen title={words.readingTitle}>{null}</Screen>;
  const book = books.find(({ key }) => key === at?.key);
  if (!book) return <Gone />;
  if (!book.value) return <Screen title={words.readingTitle}>{forms.newer}</Screen>;
  if (at?.rest[0] === 'edit' && book.own) return <CostsEdit key={book.key} book={book} value={book.value} />;
  return <OneList book={book} list={book.value} />;
}

function OneList({ book, list }: { book: Book<'price'>; list: PriceList }) {
  const format = formatter.value;
  return (
    <BookScreen
      book={book}
      value={list}
      words={words}
      canEdit={book.own}
      describe={({ name, lines }) => [name, JSON.stringify(lines)]}
      facts={[[words.currencyName, list.currency]]}
    >
      {book.own && <p>{words.forMachine}</p>}
      <dl class={styles.figures}>
        {list.lines.map(({ job, minor, labourHours, source }) => (
          <div key={job}>
            <dt>{isJobKind(job) ? jobWords[job] : job}</dt>
            <dd>
              {words.line1(
                format.money(minor, list.currency),
                format.hours(labourHours),
                words.each[isJobKind(job) ? jobTraits[job].per : 'side'],
              )}
              <br />
              <SourceLine source={source} />
            </dd>
          </div>
        ))}
      </dl>
    </BookScreen>
  );
}

/** Rates: to be read, or at `…/edit` to be changed. */
export function RatesScreen() {
  const { path } = useLocation();
  const books = useBooks('rate');
  const at = fromPath('rate', path);
  if (!books) return <Screen title={words.rates}>{null}</Screen>;
  const book = books.find(({ key }) => key === at?.key);
  if (!book) return <Gone />;
  if (!book.value) return <Screen title={words.rates}>{forms.newer}</Screen>;
  if (at?.rest[0] === 'edit' && book.own) return <CostsEdit key={book.key} book={book} value={book.value} />;
  return <OneRates book={book} rates={book.value} />;
}

function OneRates({ book, rates }: { book: Book<'rate'>; rates: Rates }) {
  const format = formatter.value;
  return (
    <BookScreen
      book={book}
      value={rates}
      words={words}
      canEdit={book.own}
      describe={(each) => [
        each.name,
        ...rateNames.map((name) => format.money(each[name].minor, each.currency)),
      ]}
      facts={[[words.currencyName, rates.currency]]}
    >
      {book.own && <p>{words.forMachine}</p>}
      <dl class={styles.figures}>
        {rateNames.map((name) => (
          <div key={name}>
            <dt>{rateWords[name]}</dt>
            <dd>
              {format.money(rates[name].minor, rates.currency)}
              <br />
              <SourceLine source={rates[name].source} />
            </dd>
          </div>
        ))}
      </dl>
    </BookScreen>
  );
}
