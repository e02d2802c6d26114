import type { ComponentChildren } from 'preact';
import { useEffect, useState } from 'preact/hooks';
import type { Report } from '../../report/blocks.ts';
import { paperActions as words, report as reportWords } from '../../words/en/report.ts';
import { hand, type Way } from '../actions/files.ts';
import { observedNow } from '../data/moment.ts';
import { tell } from '../data/notice.ts';
import { store } from '../data/phone.ts';
import { canShare, fileNameOf } from '../data/save-file.ts';
import { Button, ButtonLink } from '../parts/button.tsx';
import { Choices } from '../parts/choices.tsx';
import { Screen } from '../parts/screen.tsx';
import { choosePaper, loadPaper, paper, type Paper } from './paper.ts';
import { picturesShown, printPage, setMargins, setPaper } from './print.ts';
import { PictureSize } from './report-photo.tsx';
import { ReportView } from './report-view.tsx';
import styles from './reporting.module.css';

interface PaperScreenProps {
  readonly report: Report;
  readonly back: string;
  readonly backWord: string;
  /** What else is chosen before it is printed. */
  readonly more?: ComponentChildren;
}

const papers = (['a4', 'letter'] as const).map((value) => ({ value, label: words.papers[value] }));
const pdf = 'application/pdf';

/** Of more pictures than these the page shows the small ones; whole ones would fill a phone's memory. */
const mostWhole = 40;

/** A report or a form on a page of its own, with the ways in which it leaves the phone. */
export function PaperScreen({ report, back, backWord, more }: PaperScreenProps) {
  const [busy, setBusy] = useState(false);
  useEffect(() => void loadPaper(), []);
  useEffect(() => setMargins(report.running, reportWords.pageWords), [report.running]);
  const on: Paper = paper.value ?? 'a4';
  useEffect(() => setPaper(on), [on]);
  const give = async (way: Way): Promise<void> => {
    setBusy(true);
    const made = await asPdf(report, on);
    setBusy(false);
    if (made) await hand(made, words.written, undefined, way);
    else tell(words.noPdf);
  };
  const photos = report.blocks.filter(({ kind }) => kind === 'photo').length;
  return (
    <Screen
      wide
      title={report.title}
      bar={
        <>
          <ButtonLink href={back}>{backWord}</ButtonLink>
          <Button look="main" disabled={busy} onTap={() => void give('save')}>
            {words.pdf}
          </Button>
        </>
      }
    >
      <div class={styles.tools}>
        {more}
        <Choices
          title={words.paper}
          narrow
          options={papers}
          chosen={on}
          onChoose={(value) => void choosePaper(value)}
        />
        <div class={styles.ways}>
          <Button onTap={() => void print()}>{words.print}</Button>
          {canShare('report.pdf', pdf) && (
            <Button disabled={busy} onTap={() => void give('share')}>
              {words.share}
            </Button>
          )}
        </div>
        {busy && <p role="status">{words.working}</p>}
      </div>
      <PictureSize.Provider value={photos > mostWhole ? 'small' : 'whole'}>
        <ReportView report={report} />
      </PictureSize.Provider>
    </Screen>
  );
}

async function print(): Promise<void> {
  await picturesShown();
  if (!(await printPage())) tell(words.noPrint);
}

async function asPdf(report: Report, on: Paper) {
  try {
    const { writeReportPdf } = await import('./write-report-pdf.ts');
    const bytes = await writeReportPdf(report, { photos: store.photos, paper: on, at: observedNow() });
    return { name: `${fileNameOf(report.running)}.pdf`, type: pdf, parts: [bytes] };
  } catch {
    return undefined;
  }
}
