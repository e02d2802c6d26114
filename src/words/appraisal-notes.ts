import type { MeterCheck, MeterPart } from '../core/appraisal-meter.ts';
import type { Sign } from '../core/appraisal-signs.ts';
import { aboutHours, partPlace } from './ahead-text.ts';
import type { Telling } from './appraisal-lines.ts';
import { appraisal as words, askedSignWords, meterSaysWords, signWords } from './en/appraisal.ts';
import { sideNames } from './en/items.ts';
import { capital, outcomePlace } from './outcome-text.ts';

const meterPart = ({ part, percent, ranHours, takes }: MeterPart, { format }: Telling): string =>
  capital(
    words.meterParts(
      format.item(part.history.item.id),
      partPlace(part),
      format.percent(percent),
      format.hours(Math.round(ranHours)),
      aboutHours(takes.low, format),
      aboutHours(takes.high, format),
    ),
  );

function shareText({ says, share }: MeterCheck, { format }: Telling): readonly string[] {
  if (share === undefined || says === 'plausible' || says === 'open') return [];
  return [share < 0.001 ? words.meterFew : words.meterShare(format.number(Math.round(1 / share)))];
}

/** Whether meter and wear fit, with the figures. */
export function meterTexts(of: Telling): readonly string[] {
  const { meter } = of.appraisal;
  return [
    meter.hours === undefined ? words.meterNoHours : meterSaysWords[meter.says],
    ...shareText(meter, of),
    ...meter.parts.map((each) => meterPart(each, of)),
    ...(meter.parts.some(({ isFittedKnown }) => !isFittedKnown) ? [words.meterUnknown] : []),
    ...(meter.isChanged ? [words.meterChanged] : []),
    ...(meter.isTooFast ? [words.meterTooFast] : []),
    ...(meter.fault === 'meter-back' ? [words.meterBack] : []),
  ];
}

/** A warning sign as a line. */
export function signText(sign: Sign, { format, left }: Telling): string {
  switch (sign.kind) {
    case 'found': {
      const { state } = sign.outcome;
      const finding = format.finding(state.item.id, state.finding ?? '');
      return capital(`${format.item(state.item.id)}, ${outcomePlace(sign.outcome)}: ${finding}`);
    }
    case 'adjuster-pumped':
      return signWords[sign.kind](
        sideNames[sign.side],
        format.finding('adjuster-travel', sign.outcome.state.finding ?? ''),
      );
    case 'ages-differ':
      return signWords[sign.kind](format.number(sign.left), format.number(sign.right));
    case 'meter':
      return signWords.meter[sign.says];
    case 'shoes-on-old-chain':
      return signWords[sign.kind](sideNames[sign.side], left(sign.newer), left(sign.older ?? 0));
    case 'tracks-on-worn-sprocket':
      return signWords[sign.kind](sideNames[sign.side], left(sign.newer));
    case 'sides-differ':
      return capital(signWords[sign.kind](format.item(sign.item), left(sign.left), left(sign.right)));
    default:
      return capital(askedSignWords[sign.kind]);
  }
}
