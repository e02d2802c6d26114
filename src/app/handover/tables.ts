import type { JobPlan } from '../../core/job-plan.ts';
import type { Outlook } from '../../core/outlook.ts';
import { calendarOf, type Calendar } from '../../files/calendar.ts';
import { csvStyleOf } from '../../files/csv-cells.ts';
import { planCsv } from '../../files/csv-plan.ts';
import { readingsCsv } from '../../files/csv-readings.ts';
import { itemsCsv, type CsvReader } from '../../files/csv.ts';
import { calendar as calendarWords } from '../../words/en/calendar.ts';
import { csvWords } from '../../words/en/csv.ts';
import { hand, walkFileName, type Way } from '../actions/files.ts';
import { reasonText } from '../data/describe.ts';
import { formatter } from '../data/format.ts';
import { observedNow } from '../data/moment.ts';
import { preferences } from '../data/preferences.ts';
import { fileNameOf } from '../data/save-file.ts';
import type { WalkModel } from '../data/walk-model.ts';
import { files } from '../../words/en/files.ts';

export const csvType = 'text/csv';
export const calendarType = 'text/calendar';

export const csvReader = (): CsvReader => {
  const format = formatter.value;
  const style = csvStyleOf(preferences.value.locale);
  return { style, format, reasonText: (reason) => reasonText(reason, format) };
};

async function give(
  model: WalkModel,
  file: { readonly part: string; readonly ending: string; readonly type: string; readonly text: string },
  way: Way,
): Promise<void> {
  const name = `${fileNameOf(`${await walkFileName(model.key)} ${file.part}`)}.${file.ending}`;
  await hand({ name, type: file.type, parts: [file.text] }, files.written(name), undefined, way);
}

/** Which numbers the table is written in, as its name says. */
const styleName = (): string => csvWords.styles[csvReader().style];

/** A row for each item: what was found, what it needs, and the hours left where they are known. */
export async function giveItems(model: WalkModel, outlook: Outlook | undefined, way: Way): Promise<void> {
  const { key, walk, machine } = model;
  const rows = {
    key,
    walk,
    machine,
    outcomes: model.scored.outcomes,
    ...(outlook && { parts: outlook.hours.parts }),
  };
  const text = itemsCsv([rows], csvReader());
  await give(model, { part: `${csvWords.items} ${styleName()}`, ending: 'csv', type: csvType, text }, way);
}

/** A row for each reading as it was made. */
export async function giveReadings(model: WalkModel, way: Way): Promise<void> {
  const { key, walk, machine } = model;
  const { readings } = model.assembled.input;
  const text = readingsCsv([{ key, walk, machine, readings }], csvReader());
  await give(model, { part: `${csvWords.readings} ${styleName()}`, ending: 'csv', type: csvType, text }, way);
}

/** A row for each job of the plan, with its visit and what it costs. */
export async function givePlan(model: WalkModel, outlook: Outlook, plan: JobPlan, way: Way): Promise<void> {
  const { key, walk, machine } = model;
  const text = planCsv({ key, walk, machine, plan, outlook }, csvReader());
  await give(model, { part: `${csvWords.plan} ${styleName()}`, ending: 'csv', type: csvType, text }, way);
}

/** The re-check and the visits of the plan as days, or why there are none. */
export function calendarFor(model: WalkModel, outlook: Outlook): Calendar {
  const { format, reasonText: said } = csvReader();
  const { key, walk, machine, scored } = model;
  return calendarOf(
    { walkKey: key, walk, machine, scored, outlook },
    { format, locale: preferences.value.locale, reasonText: said, now: observedNow().utc },
  );
}

export const giveCalendar = (model: WalkModel, text: string, way: Way): Promise<void> =>
  give(model, { part: calendarWords.name, ending: 'ics', type: calendarType, text }, way);
