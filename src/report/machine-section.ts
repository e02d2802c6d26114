import type { Machine, Side } from '../core/machine.ts';
import { sides } from '../core/machine.ts';
import {
  depthWords,
  groundWords,
  loadWords,
  machineKindWords,
  purposeWords,
  startWords,
  turningWords,
} from '../words/en/choices.ts';
import { sideNames } from '../words/en/items.ts';
import { report as words } from '../words/en/report.ts';
import { cleanlinessWords } from '../words/en/sag.ts';
import type { Formatter } from '../words/format.ts';
import { shapeInWords } from '../words/machine-text.ts';
import type { Block } from './blocks.ts';
import { facts, heading, text } from './parts.ts';
import type { ReportInput } from './report-input.ts';

type Of = Pick<ReportInput, 'input' | 'format' | 'dates'>;

const known = <T>(value: T | undefined, say: (value: T) => string): string | undefined =>
  value === undefined ? undefined : say(value);

function sideText(machine: Machine, side: Side, { hours }: Formatter): string | undefined {
  const own = machine[side];
  const parts = [own?.make, own?.size, known(own?.fittedAtHours, (at) => words.fittedAt(hours(at)))];
  return parts.filter(Boolean).join(', ');
}

/** What the machine is. */
export function machineFacts({ input: { machine }, format }: Omit<Of, 'dates'>): readonly Block[] {
  return facts([
    [words.machineName, machine.name],
    [words.machineKind, machineKindWords[machine.kind]],
    [words.maker, machine.maker],
    [words.model, machine.model],
    [words.pin, machine.pin],
    [words.mass, known(machine.massKg, format.mass)],
    [words.undercarriage, shapeInWords(machine.shape, format)],
    ...sides.map((side) => [words.trackOf(sideNames[side]), sideText(machine, side, format)] as const),
    [words.note, machine.note],
  ]);
}

/** When, for whom, by whom and under which conditions it was looked at. */
function walkFacts({ input: { walk }, format, dates }: Of): readonly Block[] {
  const { purpose, depth, start, startedAt, finishedAt } = walk;
  return facts([
    [words.purpose, purposeWords[purpose].label],
    [words.depth, depthWords[depth].label],
    [words.begun, known(startedAt, dates.moment)],
    [words.finished, known(finishedAt, dates.moment)],
    [words.how, start === 'walk' ? undefined : startWords[start].label],
    [words.meter, known(walk.meterHours, format.hours)],
    [words.travel, known(walk.travelHours, format.hours)],
    [words.inspector, walk.inspector],
    [words.customer, walk.customer],
    [words.site, walk.site],
    [words.jobNumber, walk.jobNumber],
    [words.contact, walk.contact],
    [words.ground, known(walk.ground, (ground) => groundWords[ground])],
    [words.turning, known(walk.turning, (turning) => turningWords[turning])],
    [words.load, known(walk.load, (load) => loadWords[load].label)],
    [words.clean, known(walk.clean, (clean) => cleanlinessWords[clean])],
    [words.corrects, walk.corrects],
    [words.note, walk.note],
  ]);
}

/** The machine and the walk, as they are on record. */
export const machineSection = (of: Of): readonly Block[] => [
  heading(2, words.machine),
  ...machineFacts(of),
  heading(2, words.walk),
  ...walkFacts(of),
  ...(of.input.walk.finishedAt === undefined ? [text(words.notFinished, 'caution')] : []),
];
