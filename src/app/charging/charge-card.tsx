import type { Contract } from '../../core/contract.ts';
import type { RecordKey } from '../../core/keys.ts';
import { isToSettle, type ChargeLine } from '../../core/rental-line.ts';
import { toldBy } from '../../reference/wear-or-damage.ts';
import { amountText, lineRows, lineTitle, standingText } from '../../words/charge-text.ts';
import { charge as words } from '../../words/en/charge.ts';
import { photos as photoWords } from '../../words/en/photos.ts';
import { formatter } from '../data/format.ts';
import { tell } from '../data/notice.ts';
import { notSavedLine } from '../data/saving.ts';
import { Button } from '../parts/button.tsx';
import { Facts } from '../parts/facts.tsx';
import { Fold } from '../parts/fold.tsx';
import { usePicture } from '../photos/picture-address.ts';
import { SettleFields } from './settle-fields.tsx';
import { settleLine } from './settle-line.ts';
import styles from './charging.module.css';

interface ChargeCardProps {
  readonly walk: RecordKey<'walk'>;
  readonly line: ChargeLine;
  readonly contract: Contract;
  /** The contract was entered, and does not just stand in for none. */
  readonly agreed: boolean;
  /** The walk is sealed: what was settled stays. */
  readonly fixed: boolean;
}

/** One line of the list: what it is, why it is charged or not, both pictures, and all that it stands on. */
export function ChargeCard({ walk, line, contract, agreed, fixed }: ChargeCardProps) {
  const format = formatter.value;
  const why = standingText(line);
  const isCharged = line.standing.kind === 'charged';
  const amount = isCharged ? amountText(line, contract.currency, format) : undefined;
  const settledBy = line.standing.kind === 'open' ? undefined : line.standing.by;
  const open = async (): Promise<void> => {
    const saved = await settleLine(walk, line.id, undefined);
    if (!saved.ok) tell(notSavedLine(saved.error));
  };
  return (
    <section class={styles.line} aria-label={lineTitle(line)}>
      <h3>{lineTitle(line)}</h3>
      {amount !== undefined && <p class={styles.amount}>{amount}</p>}
      {why !== '' && <p>{why}</p>}
      <Pair line={line} fixed={fixed} />
      <Facts
        facts={lineRows(line, contract, format, toldBy).filter(
          ([name]) => !isCharged || name !== words.amount,
        )}
      />
      {!fixed && isToSettle(line) && (
        <SettleFields walk={walk} line={line} currency={agreed ? contract.currency : undefined} />
      )}
      {!fixed && settledBy && (
        <Button look="plain" onTap={() => void open()}>
          {words.undoSettle}
        </Button>
      )}
    </section>
  );
}

/** A line that is not charged, folded up: what it is and why; inside, all that it stands on. */
export function FoldedLine(props: ChargeCardProps) {
  return (
    <Fold title={lineTitle(props.line)} line={standingText(props.line)}>
      <ChargeCard {...props} />
    </Fold>
  );
}

/** Both pictures of the place side by side; which of them is missing is said. */
function Pair({ line, fixed }: Pick<ChargeCardProps, 'line' | 'fixed'>) {
  const take = (text: string): string => (fixed ? text : `${text} ${words.takeNow}`);
  const { before, after } = line.photos;
  if (before === undefined && after === undefined)
    return line.kind === 'damage' ? <p class={styles.quiet}>{take(words.noPair)}</p> : null;
  return (
    <div class={styles.pair}>
      <Side
        sha256={before}
        title={words.pairOut}
        none={words.noPairOut}
        alt={words.altOut(lineTitle(line))}
      />
      <Side
        sha256={after}
        title={words.pairBack}
        none={take(words.noPairBack)}
        alt={words.altBack(lineTitle(line))}
      />
    </div>
  );
}

interface SideProps {
  readonly sha256: string | undefined;
  readonly title: string;
  readonly none: string;
  readonly alt: string;
}

function Side({ sha256, title, none, alt }: SideProps) {
  const picture = usePicture(sha256, 'whole');
  return (
    <figure>
      {picture?.address !== undefined && <img src={picture.address} alt={alt} />}
      {picture && picture.address === undefined && <p>{photoWords.gone}</p>}
      <figcaption>{sha256 === undefined ? none : title}</figcaption>
    </figure>
  );
}
