import { useMemo } from 'preact/hooks';
import { isDemo } from '../../core/keys.ts';
import type { Person } from '../../core/person.ts';
import { buildReport } from '../../report/build-report.ts';
import type { ReportSeal } from '../../report/report-input.ts';
import { makeDates } from '../../words/dates.ts';
import { common } from '../../words/en/common.ts';
import { report as words } from '../../words/en/report.ts';
import { verdict } from '../../words/en/verdict.ts';
import { reasonTexts } from '../data/built-in.ts';
import { formatter } from '../data/format.ts';
import { walkPath } from '../data/paths.ts';
import { preferences } from '../data/preferences.ts';
import { useAhead } from '../data/use-ahead.ts';
import type { WalkModel } from '../data/walk-model.ts';
import { ButtonLink } from '../parts/button.tsx';
import { Screen } from '../parts/screen.tsx';
import { useWalkPhotos } from '../photos/walk-photos.ts';
import type { SealView } from '../../files/seal-view.ts';
import { useSeals } from '../sealing/use-seals.ts';
import { PaperScreen } from './paper-screen.tsx';

/** The report of a walk, once hours left, pictures and seals have been looked up. */
export function ReportScreen({ model }: { model: WalkModel }) {
  const ahead = useAhead(model);
  const photos = useWalkPhotos(model.key);
  const seals = useSeals(model, 'all');
  const [format, { locale, depth, length }] = [formatter.value, preferences.value];
  const report = useMemo(() => {
    if (ahead === undefined || photos === undefined || seals === undefined) return undefined;
    const all = seals === 'failed' ? [] : seals.all;
    return buildReport({
      input: model.assembled.input,
      scored: model.scored,
      outlook: ahead === 'failed' ? undefined : ahead.outlook,
      invented: isDemo(model.key),
      photos,
      people: peopleOf(all),
      seals: seals === 'failed' ? 'not-checked' : all.map(sealOf),
      format,
      units: { depth, length },
      dates: makeDates(locale),
      reasonTexts: reasonTexts.value,
    });
  }, [model, ahead, photos, seals, format, locale, depth, length]);
  const back = walkPath(model.key, 'verdict');
  if (report) return <PaperScreen report={report} back={back} backWord={verdict.title} />;
  return (
    <Screen
      title={words.title(model.machine.name)}
      bar={<ButtonLink href={back}>{verdict.title}</ButtonLink>}
    >
      <p role="status">{common.loading}</p>
    </Screen>
  );
}

const sealOf = ({ hash, fingerprint, state, says }: SealView): ReportSeal => ({
  hash,
  state,
  fingerprint,
  sealedAt: says?.sealedAt,
});

/** Who signed any of the seals, each once, as far as their record is the one that was sealed. */
function peopleOf(seals: readonly SealView[]): readonly Person[] {
  const people = new Map<string, Person>();
  for (const { people: named } of seals)
    for (const { key, state, person } of named) if (person && state === 'as-sealed') people.set(key, person);
  return [...people.values()];
}
