import { report as words } from '../words/en/report.ts';
import type { Block, Report } from './blocks.ts';
import { cautionSection } from './caution-section.ts';
import { hoursSection } from './hours-section.ts';
import { itemSections } from './item-sections.ts';
import { machineSection } from './machine-section.ts';
import { openSection } from './open-section.ts';
import { page } from './page.ts';
import { heading, text } from './parts.ts';
import { photoSection } from './photo-section.ts';
import { planSection } from './plan-section.ts';
import type { ReportInput } from './report-input.ts';
import { sealSection, signedSection } from './seal-section.ts';
import { sourceSection } from './source-section.ts';
import { verdictSection } from './verdict-section.ts';

/** The report of a walk, the same from the same input: what was found, what it means, and how it can be checked. */
export function buildReport(of: ReportInput): Report {
  const { machine, walk } = of.input;
  const title = words.title(machine.name);
  const at = walk.finishedAt ?? walk.startedAt;
  const blocks: readonly Block[] = [
    heading(1, title),
    ...(of.invented ? [text(words.invented, 'caution')] : []),
    ...verdictSection(of),
    ...(of.ofPurpose ?? []),
    ...machineSection(of),
    ...itemSections(of),
    ...openSection(of),
    ...hoursSection(of),
    ...planSection(of),
    ...cautionSection(of),
    ...photoSection(of),
    ...sourceSection(of),
    ...signedSection(of),
    ...sealSection(of),
  ];
  return page(title, blocks, words.running(machine.name, at === undefined ? '' : of.dates.day(at)));
}
