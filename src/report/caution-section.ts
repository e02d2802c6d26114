import type { ItemOutcome } from '../core/score.ts';
import type { Shape } from '../core/machine.ts';
import type { Caution } from '../core/walk.ts';
import { cautionWords, firstWord } from '../words/en/cautions.ts';
import { report as words } from '../words/en/report.ts';
import type { Block } from './blocks.ts';
import { heading, list, section, text } from './parts.ts';
import type { ReportInput } from './report-input.ts';

/** The cautions that the work asks for: those of any work, then those of the tensioner and of a track that comes off. */
function cautionsOf(shape: Shape, outcomes: readonly ItemOutcome[]): readonly Caution[] {
  const tightens = outcomes.some(({ atLeast }) => atLeast === 'adjust');
  const comesOff = outcomes.some(
    ({ atLeast, state }) => state.item.component === 'track' && (atLeast === 'replace' || atLeast === 'park'),
  );
  return [
    'ground',
    'raised',
    ...(tightens || comesOff ? ([shape.tensioner] as const) : []),
    ...(comesOff ? (['track-down'] as const) : []),
  ];
}

/** The given cautions, each under its own heading. */
export const cautionBlocks = (cautions: readonly Caution[]): readonly Block[] =>
  section(words.cautions, [
    text(firstWord, 'caution'),
    ...cautions.flatMap((caution) => {
      const { title, lines } = cautionWords[caution];
      return [heading(3, title), ...list(lines)];
    }),
  ]);

/** What whoever does the work has to know before. */
export const cautionSection = ({ input, scored }: ReportInput): readonly Block[] =>
  cautionBlocks(cautionsOf(input.machine.shape, scored.outcomes));
