import {
  pulls,
  tieAnswers,
  type Hold,
  type TieAnswer,
  type TieGroup,
  type TieRules,
  type Ties,
} from '../../core/hauling-ties.ts';
import type { Sum } from '../../core/hauling.ts';
import type { Source } from '../../core/source.ts';
import { hauling as words, holdByWords, holdToWords, tieFieldWords } from '../../words/en/hauling.ts';
import { formatter } from '../data/format.ts';
import { Facts, type Fact } from '../parts/facts.tsx';
import { Fold } from '../parts/fold.tsx';
import styles from '../parts/forms.module.css';
import { Basis, Card, StillOpen } from './haul-cards.tsx';
import { mass, printed, sumText } from './haul-text.ts';

interface Said {
  readonly enough: (have: string, need: string) => string;
  readonly short: (have: string, need: string) => string;
  readonly show: (value: number) => string;
}

const counted = (count: number): string => formatter.value.number(count);
const counts: Said = { enough: words.tieEnough, short: words.tieShort, show: counted };
const masses: Said = { enough: words.sumEnough, short: words.sumShort, show: mass };

function Answer({ answer, said }: { answer: TieAnswer; said: Said }) {
  if (answer.kind === 'open')
    return <StillOpen names={answer.open.map((field) => tieFieldWords[field].name)} />;
  const say = answer.kind === 'enough' ? said.enough : said.short;
  return <p class={styles.strong}>{say(said.show(answer.have), said.show(answer.need))}</p>;
}

function Group({ group, way }: { group: TieGroup; way: 'half' | 'whole' }) {
  const { count, wllKg } = group;
  if (count === undefined || wllKg === undefined || count === 0) return null;
  const sum = count * wllKg * (way === 'half' ? 0.5 : 1);
  return <p>{words[way](counted(count), mass(wllKg), mass(sum))}</p>;
}

interface TieCardsProps {
  readonly rules: TieRules;
  readonly article: Sum;
  readonly ties: Ties;
}

/** The ties against the law: how many by mass and by length, and what they hold together. */
export function TieCards({ rules, article, ties }: TieCardsProps) {
  const { count, byLength, aggregate, advised, weak } = tieAnswers(rules, article, ties);
  const { sources, since } = rules;
  const isLight = count.kind !== 'open' && count.need < advised;
  return (
    <>
      <Card title={words.tieCount} source={isLight ? sources.lightCount : sources.count} since={since}>
        <Answer answer={count} said={counts} />
        {isLight && count.have < advised && <p>{words.advised(counted(advised))}</p>}
      </Card>
      <Card title={words.tieLength} source={sources.length} since={since}>
        <Answer answer={byLength} said={counts} />
      </Card>
      <Card title={words.tieSum} source={sources.aggregate} since={since}>
        <Answer answer={aggregate} said={masses} />
        <Group group={ties.direct} way="half" />
        <Group group={ties.over} way="whole" />
        {article.kg > 0 && (
          <p>
            {words.halfMass(sumText(article), sumText({ ...article, kg: article.kg * rules.aggregateShare }))}
          </p>
        )}
      </Card>
      {weak && (
        <Card title={words.eachTie} source={sources.eachTie}>
          <p class={styles.strong}>{words.weak(printed(rules.eachTie))}</p>
        </Card>
      )}
    </>
  );
}

interface HoldsCardProps {
  readonly holds: readonly Hold[];
  readonly source: Source;
  readonly since?: string;
  readonly article: Sum;
  readonly note: string | undefined;
}

/** What must be held in each direction. */
export function HoldsCard({ holds, source, since, article, note }: HoldsCardProps) {
  if (article.kg === 0) return null;
  const lines = pulls(holds, article).map(({ by, to, share, kg }): Fact => [
    words.direction(holdByWords[by], holdToWords[to]),
    words.holdLine(formatter.value.number(share), sumText(article), mass(kg)),
  ]);
  return (
    <Fold title={words.holds} line={note}>
      <Facts facts={lines} />
      <Basis source={source} since={since} />
    </Fold>
  );
}
