import { rateNames } from '../../core/costs.ts';
import { isSoft, type Source } from '../../core/source.ts';
import { costs as words } from '../../words/en/costs.ts';
import { common } from '../../words/en/common.ts';
import { useBooks } from '../data/books.ts';
import { ButtonLink } from '../parts/button.tsx';
import { Screen } from '../parts/screen.tsx';
import { BookShelf } from './book-shelf.tsx';
import { ImportButton } from './import-button.tsx';

const lineOf = (parts: readonly string[], sources: readonly Source[]): string =>
  [...parts, ...(sources.some(isSoft) ? [words.soft] : [])].join(', ');

/** Every price list and all rates, this phone's own first. */
export function CostsShelf() {
  const prices = useBooks('price');
  const rates = useBooks('rate');
  return (
    <Screen wide title={words.title} sub={words.line} bar={<ButtonLink href="/">{common.back}</ButtonLink>}>
      <h2>{words.prices}</h2>
      <BookShelf
        books={prices ?? []}
        lineOf={({ lines, currency }) =>
          lineOf(
            [words.lines(lines.length), currency],
            lines.map(({ source }) => source),
          )
        }
      />
      <h2>{words.rates}</h2>
      <BookShelf
        books={rates ?? []}
        lineOf={(each) =>
          lineOf(
            [each.currency],
            rateNames.map((name) => each[name].source),
          )
        }
      />
      <ImportButton label={words.importFile} />
    </Screen>
  );
}
