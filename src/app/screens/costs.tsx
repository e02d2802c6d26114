import { costs as words } from '../../words/en/costs.ts';
import { common } from '../../words/en/common.ts';
import { useBooks } from '../data/books.ts';
import { ButtonLink } from '../parts/button.tsx';
import { Screen } from '../parts/screen.tsx';
import { BookShelf } from './book-shelf.tsx';
import { ImportButton } from './import-button.tsx';

/** Every price list and all rates, this phone's own first. */
export function CostsShelf() {
  const prices = useBooks('price');
  const rates = useBooks('rate');
  return (
    <Screen wide title={words.title} sub={words.line} bar={<ButtonLink href="/">{common.back}</ButtonLink>}>
      <h2>{words.prices}</h2>
      <BookShelf
        books={prices ?? []}
        lineOf={({ lines, currency }) => `${words.lines(lines.length)}, ${currency}`}
      />
      <h2>{words.rates}</h2>
      <BookShelf books={rates ?? []} lineOf={({ currency }) => currency} />
      <ImportButton label={words.importFile} />
    </Screen>
  );
}
