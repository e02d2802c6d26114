import { useMemo } from 'preact/hooks';
import { isDemo } from '../../core/keys.ts';
import { appraisalPage } from '../../report/build-appraisal.ts';
import { makeDates } from '../../words/dates.ts';
import { appraisal as words } from '../../words/en/appraisal.ts';
import { formatter } from '../data/format.ts';
import { walkPath } from '../data/paths.ts';
import { preferences } from '../data/preferences.ts';
import type { Ahead } from '../data/use-ahead.ts';
import type { WalkModel } from '../data/walk-model.ts';
import { PaperScreen } from '../reporting/paper-screen.tsx';
import { appraised } from './appraised.ts';

/** The page that buyer and seller read, to be printed or saved as a PDF. */
export function AppraisalPage({ model, ahead: { outlook } }: { model: WalkModel; ahead: Ahead }) {
  const [format, { locale, depth, length }] = [formatter.value, preferences.value];
  const report = useMemo(
    () =>
      appraisalPage({
        input: model.assembled.input,
        appraisal: appraised(model, outlook),
        outlook,
        invented: isDemo(model.key),
        format,
        units: { depth, length },
        dates: makeDates(locale),
      }),
    [model, outlook, format, locale, depth, length],
  );
  return <PaperScreen report={report} back={walkPath(model.key, 'appraisal')} backWord={words.title} />;
}
