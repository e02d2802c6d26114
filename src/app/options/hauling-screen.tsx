import { useLocation } from 'preact-iso';
import { ratingAnswers, wholeSum, type Haul } from '../../core/hauling.ts';
import { ruleAnswer } from '../../core/hauling-rules.ts';
import { isDemo, type RecordKey } from '../../core/keys.ts';
import type { Machine } from '../../core/machine.ts';
import { haulLawsReadOn, haulRules, type Region } from '../../reference/hauling.ts';
import { makeDates } from '../../words/dates.ts';
import { common } from '../../words/en/common.ts';
import { hauling as words, ratingWords, ruleWords } from '../../words/en/hauling.ts';
import { valueOf } from '../data/live.ts';
import { fromPath, machinePath } from '../data/paths.ts';
import { preferences } from '../data/preferences.ts';
import { useRecord } from '../data/record.ts';
import { useDraft } from '../data/use-draft.ts';
import { ButtonLink } from '../parts/button.tsx';
import { Screen } from '../parts/screen.tsx';
import { Gone } from '../screens/gone.tsx';
import walk from '../screens/walk.module.css';
import { GroundSection } from './ground-section.tsx';
import { emptyLoad, emptyRig, haulOf, tiesOf, type LoadForm, type RigForm } from './haul-form.ts';
import { HaulSections } from './haul-sections.tsx';
import { askedLine, mass, sumText } from './haul-text.ts';

/** Whether a machine may go on this trailer or truck: of one machine, or alone. */
export function HaulingScreen() {
  const { path } = useLocation();
  const key = path.startsWith('/machine/') ? fromPath('machine', path)?.key : undefined;
  const found = valueOf(useRecord<Machine>(key));
  if (path === '/hauling') return <OneHaul />;
  if (key === undefined) return <Gone />;
  if (!found) return <Screen title={words.title}>{null}</Screen>;
  if (!found.value) return <Gone />;
  return <OneHaul key={key} machineKey={key} machine={found.value} />;
}

/** Truck and trailer are typed once for all machines; the demo's stay in the demo. */
const rigKey = (key: RecordKey | undefined): string =>
  `${key !== undefined && isDemo(key) ? 'demo/' : ''}form/rig`;
const ownKey = (form: 'haul' | 'ground', key: RecordKey | undefined): string =>
  key === undefined ? `form/${form}` : `${isDemo(key) ? 'demo/' : ''}form/${form}/${key}`;

/** The law of the place that the phone's language names; one tap changes it. */
function usualRegion(): Region {
  const { locale, mass } = preferences.value;
  if (locale.endsWith('-GB')) return 'gb';
  return mass === 'lb' ? 'us' : 'eu';
}

function OneHaul({ machineKey, machine }: { machineKey?: RecordKey<'machine'>; machine?: Machine }) {
  const [rig, setRig] = useDraft<RigForm>(rigKey(machineKey), emptyRig);
  const [load, setLoad] = useDraft<LoadForm>(ownKey('haul', machineKey), emptyLoad);
  const machineKg = machine?.massKg;
  const region = rig.region ?? usualRegion();
  const haul = haulOf(rig, load, machineKg);
  return (
    <Screen
      wide
      title={words.title}
      sub={machine?.name}
      bar={<ButtonLink href={machineKey ? machinePath(machineKey) : '/'}>{common.back}</ButtonLink>}
    >
      <p>{words.lead}</p>
      <Summary haul={haul} region={region} />
      <HaulSections {...{ rig, load, setRig, setLoad, machineKg, region, haul }} ties={tiesOf(rig, load)} />
      <GroundSection draftKey={ownKey('ground', machineKey)} machine={machine} massKg={haul.kg.machine} />
      <p>{words.readOn(makeDates(preferences.value.locale).date(haulLawsReadOn))}</p>
    </Screen>
  );
}

/** The whole in a few lines: mass, what is over, which licence. */
function Summary({ haul, region }: { haul: Haul; region: Region }) {
  const answers = ratingAnswers(haul);
  const over = answers.flatMap((each) => (each.kind === 'over' ? [each] : []));
  const [licence] = haulRules[region].map((rule) => ruleAnswer(haul, rule));
  const isNone = answers.every(({ kind }) => kind === 'open' || kind === 'no-rating');
  const isSure = answers.every(({ kind }) => kind === 'within' || kind === 'no-rating');
  return (
    <div class={walk.big} role="status" aria-label={words.comesTo}>
      <span>
        {words.onRoad}: <strong>{sumText(wholeSum(haul))}</strong>
      </span>
      {over.map(({ rating, byKg }) => (
        <strong key={rating}>{words.isOver(mass(byKg), ratingWords[rating])}</strong>
      ))}
      {over.length > 0 && <span>{words.overStop}</span>}
      {over.length === 0 && (
        <span>{isNone ? words.noRatingYet : isSure ? words.allWithin : words.noneOver}</span>
      )}
      {licence && (
        <span>
          {ruleWords[licence.rule.rule].title}: <strong>{askedLine(licence)}</strong>
        </span>
      )}
      <span>{words.notPermission}</span>
    </div>
  );
}
