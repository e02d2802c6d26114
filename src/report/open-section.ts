import { callRank } from '../core/calls.ts';
import { parkingNotAsked } from '../core/groups.ts';
import { openLine } from '../words/en/open.ts';
import { report as words } from '../words/en/report.ts';
import { verdict } from '../words/en/verdict.ts';
import { capital, outcomePlace } from '../words/outcome-text.ts';
import type { Block } from './blocks.ts';
import { list, section, text, unique } from './parts.ts';
import type { ReportInput } from './report-input.ts';

/** What is not known and why, first what could park the machine; and what a walk of this depth never asks. */
export function openSection({ input, scored, format }: ReportInput): readonly Block[] {
  const { openParking, openOther } = scored.verdict;
  const all = [...openParking, ...openOther].sort((a, b) => callRank(b.atLeast) - callRank(a.atLeast));
  const lines = unique(
    all.map((outcome) => {
      const name = `${capital(outcomePlace(outcome))}, ${format.item(outcome.state.item.id)}`;
      return words.openAt(name, outcome.open.map((open) => openLine(open, format)).join(' '));
    }),
  );
  const unasked = parkingNotAsked(input.machine, input.walk).map(({ id }) => format.item(id));
  return section(words.open, [
    text(lines.length === 0 ? verdict.nothingOpen : verdict.openLine),
    ...list(lines),
    ...(unasked.length === 0 ? [] : [text(verdict.shortLeaves(unasked.join(', ')))]),
  ]);
}
