import type { Params } from '../../core/reason.ts';
import type { Formatter, Message } from '../format.ts';
import { sizeOf } from '../size-of.ts';

/** "77 to 87 mm" where the band is known. */
function band({ lowMm, highMm }: Params, { length }: Formatter): string {
  return typeof lowMm === 'number' && typeof highMm === 'number'
    ? ` (${length(lowMm)} to ${length(highMm)})`
    : '';
}

const by = ({ byMm }: Params, { length }: Formatter): string =>
  typeof byMm === 'number' ? ` by ${length(byMm)}` : '';

const readSize = ({ item, mm, limitMm }: Params, format: Formatter): string =>
  typeof mm === 'number' && typeof limitMm === 'number'
    ? `${sizeOf(String(item), mm, format)} read, limit ${sizeOf(String(item), limitMm, format)}`
    : 'its limit';

const worn = ({ percent: value }: Params, { percent }: Formatter): string =>
  typeof value === 'number' ? `${percent(value)} worn` : 'Worn';

// Every model gets one turn; more only where its own manual says so (trade figures: one turn in six manuals).
const easeGrease =
  'clear stones and packed mud first, then ease the valve in small steps, no more than one turn unless this machine’s manual allows more, face and body aside. Never loosen the nipple; if no grease comes, stop.';
const easeIt = ({ tensioner }: Params): string =>
  tensioner === 'spring' ? 'slacken the tensioner as the manual says.' : easeGrease;

/** Sentences with figures, by message id. */
export const reasonMessages: Readonly<Record<string, Message>> = {
  'wear.watch': (params, format) =>
    `${worn(params, format)} (${readSize(params, format)}). It is nearing its limit: look sooner next time and order in good time.`,
  'wear.limit': (params, format) =>
    `${worn(params, format)} (${readSize(params, format)}). It is at its limit: plan the job now.`,
  'wear.beyond': (params, format) =>
    `${worn(params, format)} (${readSize(params, format)}). It is far past its limit and wears its neighbours: light work until it is done.`,
  written: ({ text }) => String(text ?? ''),
  'sag.tight': (params, format) =>
    `The track is too tight${by(params, format)}${band(params, format)}. Ease: ${easeIt(params)}`,
  'sag.loose': (params, format) =>
    `The track is too loose${by(params, format)}${band(params, format)}. Tighten it, then drive a few metres and read again.`,
  'sag.derailing': (params, format) =>
    `The track is loose${by(params, format)}${band(params, format)}, so loose that it can come off. Tighten it before it works; until then only straight and slowly.`,
  'sag-by-eye.tight': (params) => `The track looks tight. Measure, and if it is, ease it: ${easeIt(params)}`,
  'crack.watch': ({ lengthMm, depthMm }, { depth }) =>
    typeof lengthMm === 'number' && typeof depthMm === 'number'
      ? `A crack ${depth(lengthMm)} long and ${depth(depthMm)} deep can be left for now. Mark its ends and see at the next walk whether it grows.`
      : 'This crack can be left for now. Mark its ends and see at the next walk whether it grows.',
  'crack.repair': ({ lengthMm, depthMm }, { depth }) =>
    typeof lengthMm === 'number' && typeof depthMm === 'number'
      ? `A crack ${depth(lengthMm)} long and ${depth(depthMm)} deep lets water in to the cords. Clean, fill and seal it before it reaches them.`
      : 'This crack lets water in to the cords. Clean, fill and seal it before it reaches them.',
  'lug-damage.many-torn': ({ count }, { number }) =>
    `${typeof count === 'number' ? number(count) : 'Many'} lugs are torn out, about a tenth of the loop or more. Grip and ride are gone and the carcass takes the blows: plan a new track.`,
  'roller-path.over-half': ({ share }, { percent }) =>
    `Cores show in the roller path over ${typeof share === 'number' ? percent(share * 100) : 'more than half'} of the loop. It still runs, but the track is at its end: plan a new one.`,
  'bushing.watch': ({ percent: worn }, { percent }) =>
    `${typeof worn === 'number' ? `${percent(worn)} of the way to the turn limit` : 'Near the turn limit'}. Plan the turn now if it pays: not turned before, joints oiled, none cracked, links able to outlast it; on small excavators it seldom does.`,
};
