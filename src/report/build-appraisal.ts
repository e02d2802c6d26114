import type { Outlook } from '../core/outlook.ts';
import type { Walk } from '../core/walk.ts';
import { appraisal as words } from '../words/en/appraisal.ts';
import { report as reportWords } from '../words/en/report.ts';
import { appraisalSection, type AppraisalSectionInput } from './appraisal-section.ts';
import type { Block, Report } from './blocks.ts';
import { machineFacts } from './machine-section.ts';
import { blankSignature, page } from './page.ts';
import { facts, heading, text } from './parts.ts';
import type { ReportInput } from './report-input.ts';
import { sourceSection } from './source-section.ts';

/** What the page of an appraisal is made of. */
export type AppraisalPageInput = AppraisalSectionInput &
  Pick<ReportInput, 'input' | 'invented' | 'units' | 'dates'> & { readonly outlook: Outlook };

/** The page that buyer and seller read alike: the sums first, then every line with its reasons and sources. */
export function appraisalPage(of: AppraisalPageInput): Report {
  const { machine, walk } = of.input;
  const title = words.forMachine(machine.name);
  const blocks: readonly Block[] = [
    heading(1, title),
    ...(of.invented ? [text(reportWords.invented, 'caution')] : []),
    ...appraisalSection(of, words.inShort),
    heading(2, reportWords.machine),
    ...machineFacts(of),
    ...facts([
      [reportWords.walk, dayOf(walk, of)],
      [reportWords.meter, walk.meterHours === undefined ? undefined : of.format.hours(walk.meterHours)],
      [reportWords.customer, walk.customer],
      [reportWords.site, walk.site],
    ]),
    ...sourceSection(of),
    heading(2, words.read),
    blankSignature(words.seller),
    blankSignature(words.buyer),
  ];
  return page(title, blocks, words.running(machine.name, dayOf(walk, of) ?? ''));
}

function dayOf({ finishedAt, startedAt }: Walk, { dates }: AppraisalPageInput): string | undefined {
  const at = finishedAt ?? startedAt;
  return at && dates.day(at);
}
