import { isSized, sizeOf } from '../../core/sizes.ts';
import { parsePlace } from '../../core/keys.ts';
import type { PlacedReading } from '../../core/states.ts';
import type { Reading } from '../../core/readings.ts';
import { makeDates } from '../../words/dates.ts';
import { common } from '../../words/en/common.ts';
import { findingLabel, itemName, placeName } from '../../words/en/items.ts';
import { heldAgainst as words, marks } from '../../words/en/rental-walks.ts';
import { beforeWords } from '../../words/en/rental-verdict.ts';
import { verdict } from '../../words/en/verdict.ts';
import { capital } from '../../words/outcome-text.ts';
import { noHandOut } from '../../core/hand-out.ts';
import { changeWalk } from '../actions/walk.ts';
import { formatter } from '../data/format.ts';
import { tell } from '../data/notice.ts';
import { walkPath } from '../data/paths.ts';
import { preferences } from '../data/preferences.ts';
import { notSavedLine } from '../data/saving.ts';
import { sizeText } from '../data/tool.ts';
import { useLive, valueOf } from '../data/live.ts';
import type { WalkModel } from '../data/walk-model.ts';
import { ButtonLink } from '../parts/button.tsx';
import { Choices } from '../parts/choices.tsx';
import { Screen, Section } from '../parts/screen.tsx';
import { useSeals } from '../sealing/use-seals.ts';
import type { HandedOut } from './handed-out.ts';
import { contractPath } from './links.tsx';
import { handOutsOf, ledFields } from './lookup.ts';
import type { Rental } from './rental-model.ts';
import walkStyles from '../screens/walk.module.css';

/** What a return is held against: the hand-out walk, its marked places then and now, and damage found since. */
export function HandOut({ model }: { model: WalkModel }) {
  const { rental, walk, key } = model;
  const seals = useSeals(model, 'records');
  if (!rental) return null;
  const { handOut } = rental;
  // What a seal holds stays as it was signed.
  const isSealed = seals !== undefined && seals !== 'failed' && seals.all.length > 0;
  return (
    <Screen
      title={words.title}
      sub={model.machine.name}
      bar={
        <>
          <ButtonLink href={walkPath(key, 'map')}>{verdict.goBack}</ButtonLink>
          <ButtonLink href={walkPath(key, 'verdict')}>{verdict.title}</ButtonLink>
        </>
      }
    >
      {handOut ? <p class={walkStyles.question}>{factsOf(handOut)}</p> : <NoHandOut walk={walk} />}
      {handOut && <Sizes model={model} handOut={handOut} />}
      <DamageSince rental={rental} />
      {!isSealed && <Others model={model} />}
      <ButtonLink href={contractPath(model)}>{words.contract}</ButtonLink>
    </Screen>
  );
}

function factsOf({ day, input: { walk } }: HandedOut): string {
  const { inspector, meterHours } = walk;
  return [
    words.handOutOf(day),
    ...(inspector === undefined ? [] : [words.by(inspector)]),
    ...(meterHours === undefined ? [] : [words.meter(formatter.value.hours(meterHours))]),
    ...(walk.finishedAt === undefined ? [words.notFinished] : []),
  ].join(' · ');
}

/** What can be claimed all the same, and what cannot. */
const NoHandOut = ({ walk }: Pick<WalkModel, 'walk'>) => (
  <>
    <p class={walkStyles.question}>{walk.handOut ? words.missing : words.none}</p>
    <p>{words.canClaim}</p>
    <p>{words.cannotClaim}</p>
    <p>{words.ask}</p>
  </>
);

const sizeIn = (item: string, reading: Reading | undefined): string | undefined =>
  reading && isSized(reading.what) ? sizeText(item, sizeOf(reading, reading.what, {}).mm) : undefined;

const spotOf = ({ n, reading }: PlacedReading): number => reading.spot ?? n;

interface SizesProps {
  readonly model: WalkModel;
  readonly handOut: HandedOut;
}

/** Each marked place with what it measured then and measures now. */
function Sizes({ model, handOut }: SizesProps) {
  const { readings } = model.assembled.input;
  return (
    <Section title={words.sizes}>
      <ul class={walkStyles.items}>
        {handOut.marked.map((then) => {
          const { place, item, reading } = then;
          const spot = spotOf(then);
          const now = readings.find(
            (each) => each.place === place && each.item === item && spotOf(each) === spot,
          );
          const [was = '', is] = [sizeIn(item, reading), sizeIn(item, now?.reading)];
          const text = is === undefined ? words.thenOnly(was) : words.thenNow(was, is);
          return (
            <li key={`${place}${item}${spot}`} class={walkStyles.reason}>
              <strong>{capital(words.markOf(placeName(parsePlace(place)), itemName(item), spot))}</strong>
              <span>{text}</span>
              <span>{reading.mark ? marks.at(reading.mark) : marks.none}</span>
            </li>
          );
        })}
      </ul>
    </Section>
  );
}

/** Damage found now, each with how the place was at hand-out. */
const DamageSince = ({ rental: { damages } }: { rental: Rental }) => (
  <Section title={words.since}>
    {damages.length === 0 && <p>{words.sinceNone}</p>}
    <ul class={walkStyles.items}>
      {damages.map(({ place, item, finding, before }) => (
        <li key={`${place}${item}`} class={walkStyles.reason}>
          <strong>{capital(`${placeName(parsePlace(place))}: ${itemName(item)}`)}</strong>
          <span>
            {finding === 'crack' ? words.crack : findingLabel(item, finding)}; {beforeWords[before.kind]}
          </span>
        </li>
      ))}
    </ul>
  </Section>
);

/** The hand-out walks of the machine, one of which this return is held against. */
function Others({ model: { key, rental, walk } }: { model: WalkModel }) {
  const all = valueOf(
    useLive(`hand-outs ${walk.machine}`, ['walk/', 'demo/walk/'], async () => ({
      ok: true,
      value: await handOutsOf(walk.machine),
    })),
  );
  const dates = makeDates(preferences.value.locale);
  const choose = async (handOut: string): Promise<void> => {
    const fields = handOut === noHandOut ? { handOut } : await ledFields(walk, handOut);
    const saved = await changeWalk(key, () => fields);
    if (!saved.ok) tell(notSavedLine(saved.error));
  };
  if (!all || all.length === 0) return null;
  return (
    <Choices
      title={words.choose}
      chosen={rental?.handOut?.key ?? walk.handOut ?? noHandOut}
      options={[
        ...all.map(({ key: value, value: { finishedAt, inspector } }) => ({
          value: value as string,
          label: finishedAt ? dates.moment(finishedAt) : common.notKnown,
          line: inspector === undefined ? undefined : words.by(inspector),
        })),
        { value: noHandOut, label: words.noneOfThese },
      ]}
      onChoose={(handOut) => void choose(handOut)}
    />
  );
}
