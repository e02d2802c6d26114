import { optionsReport, paperTitle } from '../../report/build-options.ts';
import { groundWords, machineKindWords, trackKindWords, turningWords } from '../../words/en/choices.ts';
import { common } from '../../words/en/common.ts';
import { machineForm } from '../../words/en/machine.ts';
import { optionPaper as words, options } from '../../words/en/options.ts';
import { againstText, settleTexts } from '../../words/option-fit-text.ts';
import { formatter } from '../data/format.ts';
import { PaperScreen } from '../reporting/paper-screen.tsx';
import { Screen } from '../parts/screen.tsx';
import { useControls } from './compare.tsx';
import { answerOf, useComparison, type Compared, type Subject } from './comparison.ts';
import { partsOf, type ControlTexts } from './controls.ts';
import { settled, shownOptions } from './option-views.tsx';

const said = (text: string | undefined): string => text ?? words.notSaid;

const yesNo = (text: string | undefined, yes: string, no: string): string =>
  said(text === 'yes' ? yes : text === 'no' ? no : undefined);

/** The machine and the work as they were set when the page was made. */
function askedOf({ machine, current, use, result }: Compared, texts: ControlTexts) {
  const format = formatter.value;
  const parts = partsOf(texts);
  const sum = parts.reduce((total, [, each]) => total + each, 0);
  const ground = parts.map(([name, each]) =>
    options.share(groundWords[name], format.percent((each / sum) * 100)),
  );
  const hours = format.hours(use.hoursAYear ?? result.figures.hoursAYear.value);
  return [
    [machineForm.kind, machineKindWords[machine.kind]],
    [machineForm.mass, said(machine.massKg === undefined ? undefined : format.mass(machine.massKg))],
    [words.trackNow, said(current && trackKindWords[current.track].label)],
    [options.ground, said(ground.length === 0 ? undefined : options.shares(ground))],
    [options.turning, said(use.turning && turningWords[use.turning])],
    [options.hours, use.hoursAYear === undefined ? words.hoursAssumed(hours) : hours],
    [options.noMarks, yesNo(texts['noMarks'], options.noMarksYes, options.noMarksNo)],
    [options.noise, yesNo(texts['noise'], options.noiseYes, options.noiseNo)],
    [options.steel, yesNo(texts['steel'], options.steelYes, options.steelNo)],
  ] as const;
}

/** The comparison as a page to print or to save as a PDF. */
export function OptionsPaper({ subject }: { subject: Subject }) {
  const { texts } = useControls(subject);
  const compared = useComparison(subject, texts);
  if (!compared) return <Screen title={options.title}>{null}</Screen>;
  const format = formatter.value;
  const report = optionsReport({
    title: paperTitle(subject.name),
    asked: askedOf(compared, texts),
    answer: answerOf(compared),
    options: shownOptions(compared).map(({ answer: shown, name, standing, lines }) => ({
      name,
      standing,
      against: shown.fit.against.map((why) => againstText(why, format)),
      toSettle: settleTexts(settled(shown), format),
      lines,
    })),
  });
  return <PaperScreen report={report} back={subject.base} backWord={common.back} />;
}
