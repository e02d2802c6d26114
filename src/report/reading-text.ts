import { toMm } from '../core/quantity.ts';
import type { ObservedOf } from '../core/readings.ts';
import type { ItemState, PlacedReading } from '../core/states.ts';
import { entry } from '../words/entry.ts';
import { fromPhoto, limitMeaningWords, toolWords } from '../words/en/choices.ts';
import { report as words } from '../words/en/report.ts';
import { cleanlinessWords, postureWords, sagMethodWords, travelWords } from '../words/en/sag.ts';
import type { Formatter } from '../words/format.ts';
import { stateText } from '../words/outcome-text.ts';
import { sizeOf } from '../words/size-of.ts';
import { sourceText } from '../words/source-text.ts';
import { unique } from './parts.ts';

const joined = (parts: readonly (string | undefined)[]): string =>
  unique(parts.filter((part) => part !== undefined && part !== '') as string[]).join(', ');

/** What was read, with its uncertainty and with how many spots it stands for. */
export function readText(state: ItemState, format: Formatter): string {
  const { sampled, item, cracks } = state;
  if (cracks.length > 1) {
    return joined(cracks.map((crack) => stateText({ ...state, cracks: [crack] }, format)));
  }
  const said = stateText(state, format);
  if (state.share !== undefined) return words.shareOf(said, format.percent(state.share * 100));
  if (!sampled) return said;
  const size = (mm: number): string => sizeOf(item.id, mm, format);
  const within = sampled.worst.uMm > 0 ? words.giveOrTake(said, size(2 * sampled.worst.uMm)) : said;
  return sampled.samples > 1 ? words.spread(within, sampled.samples, size(sampled.meanMm)) : within;
}

function sagHow(what: ObservedOf<'sag'>, format: Formatter): readonly (string | undefined)[] {
  const { method, posture, clean, travel, coasted, spanMm, loadN, mm } = what;
  return [
    sagMethodWords[method].name,
    postureWords[posture],
    cleanlinessWords[clean],
    travel && travelWords[travel],
    coasted ? travelWords.coasted : undefined,
    mm.length > 1 ? words.spans(`${mm.length} ${words.manySpans}`) : undefined,
    spanMm === undefined ? undefined : words.span(format.length(spanMm)),
    loadN === undefined ? undefined : words.loadN(format.number(loadN)),
  ];
}

/** By which tool and method something was read; what was passed with its group says so. */
export function howText(mine: readonly PlacedReading[], state: ItemState, format: Formatter): string {
  if (mine.length === 0) return state.passed ? words.groupPass : '';
  const seen = mine.flatMap(({ reading: { tool, what, confirmed, from } }) => [
    from && fromPhoto,
    tool === undefined ? undefined : (entry(toolWords, tool) ?? tool),
    ...(what.kind === 'sag' ? sagHow(what, format) : []),
    what.kind === 'finding' || (what.kind === 'crack' && tool === undefined) ? words.byEye : undefined,
    what.kind === 'pitch'
      ? words.links(format.plural(what.links, words.oneLink, words.manyLinks))
      : undefined,
    confirmed ? words.confirmed : undefined,
  ]);
  return joined(seen);
}

/** Each value of a size as it was read, where there are several. */
export function valuesText(mine: readonly PlacedReading[], state: ItemState, format: Formatter): string {
  const values = mine.flatMap(({ reading: { what } }) => {
    if (what.kind === 'length') return [sizeOf(state.item.id, what.mm, format)];
    if (what.kind === 'sag' && what.mm.length > 1) return what.mm.map((mm) => format.length(mm));
    return [];
  });
  return values.length > 1 ? words.each(values.join(', ')) : '';
}

/** New and limit size or the band, each with where it is from. */
export function againstText({ wear, limits, sag }: ItemState, format: Formatter): string {
  if (sag) {
    const { spec } = sag;
    const from = (mm: number): string => format.inUnit(mm, spec.unit, spec.resolution);
    const band = words.band(from(sag.lowMm), from(sag.highMm));
    const derail = sag.derailMm === undefined ? band : `${band}; ${words.derails(from(sag.derailMm))}`;
    return words.fromSource(derail, sourceText(spec.source));
  }
  if (!wear || !limits?.new) return '';
  const { unit, resolution } = limits;
  const at = (value: number): string => format.inUnit(toMm(value, unit), unit, resolution);
  const { limit } = wear.chosen;
  const said = words.newAndLimit(at(limits.new.at), at(wear.chosen.at), limitMeaningWords[limit.means]);
  const sources = unique([sourceText(limits.new.source), sourceText(limit.source)]);
  return words.fromSource(said, sources.join('; '));
}

/** What the person wrote beside the readings: where a mark is, and notes. */
export const notesText = (mine: readonly PlacedReading[]): string =>
  joined(mine.flatMap(({ reading: { mark, note } }) => [mark && words.mark(mark), note]));
