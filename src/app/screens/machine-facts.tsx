import type { Machine, Side } from '../../core/machine.ts';
import { sides } from '../../core/machine.ts';
import { sideNames } from '../../words/en/items.ts';
import { machine as words, machineForm } from '../../words/en/machine.ts';
import { formatter } from '../data/format.ts';
import { Facts, type Fact } from '../parts/facts.tsx';
import { Section } from '../parts/screen.tsx';
import { BookLink } from './book-link.tsx';
import { shapeInWords } from '../../words/machine-text.ts';

/** What is known of a machine. */
export function MachineFacts({ machine }: { machine: Machine }) {
  const format = formatter.value;
  const hours = (value: number | undefined) => (value === undefined ? undefined : format.hours(value));
  return (
    <Section title={words.facts}>
      <Facts
        facts={[
          [words.pin, machine.pin],
          [words.mass, machine.massKg === undefined ? undefined : format.mass(machine.massKg)],
          [words.meter, hours(machine.meterHours)],
          [words.travelHours, hours(machine.travelHours)],
          [words.undercarriage, shapeInWords(machine.shape, formatter.value)],
          [words.sheet, <BookLink key={words.sheet} bookKey={machine.sheet} none={words.noSheet} />],
          ...(machine.rules === undefined
            ? []
            : [
                [
                  words.rules,
                  <BookLink key={words.rules} bookKey={machine.rules} none={words.noRules} />,
                ] as const,
              ]),
          ...sides.flatMap((side) => sideFacts(machine, side)),
          [machineForm.note, machine.note],
        ]}
      />
    </Section>
  );
}

function sideFacts(machine: Machine, side: Side): readonly Fact[] {
  const own = machine[side];
  if (!own) return [];
  const fitted = own.fittedAtHours;
  const track = [own.make, own.size, fitted === undefined ? undefined : formatter.value.hours(fitted)];
  const name = sideNames[side];
  return [
    [machineForm.sideTitle(name), track.filter(Boolean).join(' · ') || undefined],
    [words.sheetOf(name), own.sheet && <BookLink bookKey={own.sheet} none={words.noSheet} />],
  ];
}

/** A version of a machine in a few lines, to tell it from another. */
export const describeMachine = (machine: Machine): readonly string[] =>
  [
    machine.name,
    machine.pin,
    machine.massKg === undefined ? undefined : formatter.value.mass(machine.massKg),
    machine.meterHours === undefined ? undefined : formatter.value.hours(machine.meterHours),
    shapeInWords(machine.shape, formatter.value),
    machine.note,
  ].filter((line) => line !== undefined);
