import { useMemo } from 'preact/hooks';
import { isDemo } from '../../core/keys.ts';
import { buildReport } from '../../report/build-report.ts';
import { makeDates } from '../../words/dates.ts';
import { common } from '../../words/en/common.ts';
import { report as words } from '../../words/en/report.ts';
import { verdict } from '../../words/en/verdict.ts';
import { reasonTexts } from '../data/built-in.ts';
import { formatter } from '../data/format.ts';
import { walkPath } from '../data/paths.ts';
import { preferences } from '../data/preferences.ts';
import { loadAppraisal } from '../data/load-appraisal.ts';
import { useLoaded } from '../data/use-loaded.ts';
import { useAhead } from '../data/use-ahead.ts';
import type { WalkModel } from '../data/walk-model.ts';
import { ButtonLink } from '../parts/button.tsx';
import { Screen } from '../parts/screen.tsx';
import { useWalkPhotos } from '../photos/walk-photos.ts';
import { useSeals } from '../sealing/use-seals.ts';
import { PaperScreen } from './paper-screen.tsx';
import { peopleOf, sealOf } from './seal-facts.ts';

type Sections = Awaited<ReturnType<typeof loadAppraisal>>;

/** The report of a walk, once hours left, pictures and seals have been looked up. */
export function ReportScreen({ model }: { model: WalkModel }) {
  const ahead = useAhead(model);
  const photos = useWalkPhotos(model.key);
  const seals = useSeals(model, 'all');
  const isAppraisal = model.walk.purpose === 'appraisal';
  const appraisal = useLoaded<Sections | undefined>(isAppraisal ? loadAppraisal : loadNothing);
  const [format, { locale, depth, length }] = [formatter.value, preferences.value];
  const report = useMemo(() => {
    if (ahead === undefined || photos === undefined || seals === undefined) return undefined;
    if (isAppraisal && appraisal === undefined) return undefined;
    const all = seals === 'failed' ? [] : seals.all;
    return buildReport({
      input: model.assembled.input,
      scored: model.scored,
      outlook: ahead === 'failed' ? undefined : ahead.outlook,
      ...(ahead !== 'failed' && appraisal && { ofPurpose: appraisal.reportSections(model, ahead.outlook) }),
      invented: isDemo(model.key),
      rental: model.rental,
      photos,
      people: peopleOf(all),
      seals: seals === 'failed' ? 'not-checked' : all.map(sealOf),
      format,
      units: { depth, length },
      dates: makeDates(locale),
      reasonTexts: reasonTexts.value,
    });
  }, [model, ahead, photos, seals, isAppraisal, appraisal, format, locale, depth, length]);
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

const loadNothing = (): Promise<undefined> => Promise.resolve(undefined);
