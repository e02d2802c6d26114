import type { Against, Fit, ToSettle } from '../core/option-fit.ts';
import type { AnyField } from '../core/option-match.ts';
import { unreachable } from '../core/result.ts';
import type { Formatter } from './format.ts';
import { machineKindWords } from './en/choices.ts';
import { against as words, changedPartWords, fitNames, toSettle as settle } from './en/option-facts.ts';
import { optionForm } from './en/option-form.ts';
import { optionAnswer } from './en/options.ts';
import { entry } from './entry.ts';

/** A value that has to match: a length in the reader's unit, a count, or one of a few choices in words. */
function valueText(field: AnyField, value: string | number, format: Formatter): string {
  const choices = { ...optionForm.guides, ...optionForm.rollersOn };
  if (typeof value === 'string') return entry(choices, value) ?? value;
  return field.endsWith('Mm') ? format.length(value) : format.number(value);
}

/** Why a track cannot go on, in a sentence. */
export function againstText(why: Against, format: Formatter): string {
  switch (why.kind) {
    case 'frame-takes-no-steel':
      return { said: words.noSteelSaid, pitch: words.noSteelPitch, belt: words.noSteelBelt }[why.why];
    case 'belt-needs-its-frame':
      return words.beltFrame;
    case 'whole-rubber-not-made':
      return words.notMade(machineKindWords[why.machine], format.mass(why.mostKg));
    case 'mismatch':
    case 'sprocket-differs': {
      const [now, option] = [valueText(why.field, why.now, format), valueText(why.field, why.option, format)];
      return (why.kind === 'mismatch' ? words.mismatch : words.sprocket)(fitNames[why.field], now, option);
    }
    case 'marks-paving':
      return words.paving;
    case 'over-trailer':
      return words.trailer(format.mass(why.massKg), format.mass(why.mostKg));
    default:
      return unreachable(why);
  }
}

function settleText(each: ToSettle, format: Formatter): string {
  switch (each.kind) {
    case 'not-known':
    case 'assumed': {
      const say = each.kind === 'assumed' ? settle.assumed : settle[each.of];
      return say(optionAnswer.and(each.fields.map((field) => fitNames[field])));
    }
    case 'may-not-match': {
      const { field, now, option } = each;
      return settle.mayNotMatch(
        fitNames[field],
        valueText(field, now, format),
        valueText(field, option, format),
      );
    }
    case 'width-differs':
      return settle.width(format.length(each.now), format.length(each.option));
    case 'frame-not-known':
      return settle.frame;
    case 'mass-not-known':
      return settle.mass;
    case 'near-trailer':
      return settle.nearTrailer(format.mass(each.massKg), format.mass(each.mostKg));
    case 'scuffs-paving':
      return settle.scuffs;
    default:
      return unreachable(each);
  }
}

/** What is to be settled before it is bought, each in a sentence. */
export const settleTexts = (all: Fit['toSettle'], format: Formatter): readonly string[] => [
  ...new Set(all.map((each) => settleText(each, format))),
];

/** What a change of kind needs besides the tracks. */
export const needsText = ({ needs }: Fit): string =>
  needs.length === 0
    ? optionAnswer.nothingBesides
    : optionAnswer.needs(optionAnswer.and(needs.map((part) => changedPartWords[part])));
