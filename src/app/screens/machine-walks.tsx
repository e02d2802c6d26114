import { machine as words } from '../../words/en/machine.ts';
import { depthWords, purposeWords } from '../../words/en/choices.ts';
import { makeDates } from '../../words/dates.ts';
import { preferences } from '../data/preferences.ts';
import type { MachineWalk } from '../data/machine-walks.ts';
import { walkPath } from '../data/paths.ts';
import { RowLink, RowText } from '../parts/button.tsx';
import { CallMark } from '../parts/call-mark.tsx';
import { Section } from '../parts/screen.tsx';

/** The walks of a machine, newest first: those under way to go on with, the others with their call. */
export function MachineWalks({ walks }: { walks: readonly MachineWalk[] }) {
  const dates = makeDates(preferences.value.locale);
  return (
    <Section title={words.walks}>
      {walks.length === 0 && <p>{words.noWalks}</p>}
      {walks.map(({ key, walk, call }) => {
        const at = walk.finishedAt ?? walk.startedAt;
        return (
          <RowLink key={key} href={walkPath(key)}>
            <RowText
              name={at ? dates.day(at) : purposeWords[walk.purpose].label}
              line={`${purposeWords[walk.purpose].label}, ${depthWords[walk.depth].label}`}
            />
            {call === undefined ? (
              <span>{walk.finishedAt ? words.verdict : words.notFinished}</span>
            ) : (
              <CallMark call={call} />
            )}
          </RowLink>
        );
      })}
    </Section>
  );
}
