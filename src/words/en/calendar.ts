/** What a calendar of any maker shows of a machine. */
export const calendar = {
  category: 'Undercarriage',
  recheckCategory: 'Re-check',
  visitCategory: 'Job plan',
  recheck: (machine: string): string => `${machine}: look at the undercarriage again`,
  visit: (machine: string, jobs: readonly string[]): string =>
    jobs.length === 1 ? `${machine}: ${jobs[0] ?? ''}` : `${machine}: ${jobs.length} undercarriage jobs`,
  watched: (item: string, place: string, reason: string): string => `Watch ${item}, ${place}. ${reason}`,
  first: (item: string, place: string, hours: string): string =>
    `First to wear out: ${item}, ${place}. One in ten such parts is worn out before ${hours} from the walk.`,
  due: (hours: string, pace: string): string =>
    `In about ${hours} from the walk, at ${pace} a week. An estimate: the meter decides, not the day.`,
  atWalk: 'Due at the walk already.',
  meter: (hours: string): string => `At ${hours} on the meter.`,
  outlay: (money: string): string => `About ${money} in all, an estimate.`,
  verdict: (call: string, meanwhile: string): string => `Call: ${call}. Meanwhile: ${meanwhile}.`,
  walkedOn: (day: string): string => `Walk of ${day}.`,
  noPace:
    'How many hours this machine works in a week is not known, so hours are no days. Enter its hours per week, or walk it again after three weeks with the meter read.',
  noDay: 'The walk has no date, so nothing after it has one.',
  tooFar: 'More than ten years ahead, so it is left out.',
  nothing: 'Nothing that was read gives a date.',
  name: 'calendar',
} as const;
