import { useState } from 'preact/hooks';
import { isPlanned, type Outlook } from '../../core/outlook.ts';
import { makeDates } from '../../words/dates.ts';
import { common } from '../../words/en/common.ts';
import { isDemo } from '../../core/keys.ts';
import { handover as words } from '../../words/en/handover.ts';
import { verdict } from '../../words/en/verdict.ts';
import { exportWalk, type Way } from '../actions/files.ts';
import { tell } from '../data/notice.ts';
import { walkPath } from '../data/paths.ts';
import { preferences } from '../data/preferences.ts';
import { canShare } from '../data/save-file.ts';
import { useAhead } from '../data/use-ahead.ts';
import type { WalkModel } from '../data/walk-model.ts';
import { Button, ButtonLink } from '../parts/button.tsx';
import forms from '../parts/forms.module.css';
import { Screen, Section } from '../parts/screen.tsx';
import {
  calendarFor,
  calendarType,
  csvType,
  giveCalendar,
  giveItems,
  givePlan,
  giveReadings,
} from './tables.ts';

/** Everything of a walk that can leave the phone as a file, by the share sheet or into the phone's own files. */
export function HandOver({ model }: { model: WalkModel }) {
  const bar = <ButtonLink href={walkPath(model.key, 'verdict')}>{verdict.title}</ButtonLink>;
  return (
    <Screen title={words.title} sub={model.machine.name} bar={bar}>
      {isDemo(model.key) ? <p>{words.demo}</p> : <Files model={model} />}
    </Screen>
  );
}

function Files({ model }: { model: WalkModel }) {
  const ahead = useAhead(model);
  const outlook = typeof ahead === 'object' ? ahead.outlook : undefined;
  const finished = model.walk.finishedAt !== undefined;
  return (
    <>
      <Section title={words.walk}>
        <p>{finished ? words.walkLine : words.unfinishedLine}</p>
        <Ways
          what={words.walk}
          name="walk.zip"
          type="application/zip"
          onGo={(way) => exportWalk(model.key, way)}
        />
      </Section>
      {ahead === undefined ? (
        <p role="status">{common.loading}</p>
      ) : (
        <Tables model={model} outlook={outlook} />
      )}
    </>
  );
}

function Tables({ model, outlook }: { model: WalkModel; outlook: Outlook | undefined }) {
  const calendar = outlook && calendarFor(model, outlook);
  const { text } = calendar ?? {};
  const plan = outlook && isPlanned(outlook.plan) ? outlook.plan : undefined;
  return (
    <>
      <Section title={words.table}>
        <p>{words.tableLine}</p>
        <Ways
          plain
          what={words.items}
          name="items.csv"
          type={csvType}
          onGo={(way) => giveItems(model, outlook, way)}
        />
        <Ways
          plain
          what={words.readings}
          name="readings.csv"
          type={csvType}
          onGo={(way) => giveReadings(model, way)}
        />
        {outlook && plan && (
          <Ways
            plain
            what={words.plan}
            name="plan.csv"
            type={csvType}
            onGo={(way) => givePlan(model, outlook, plan, way)}
          />
        )}
        <ButtonLink href={walkPath(model.key, 'order')}>{verdict.order}</ButtonLink>
      </Section>
      <Section title={words.dates}>
        {calendar?.events.map(({ uid, day, summary }) => (
          <p key={uid}>{words.event(makeDates(preferences.value.locale).date(day), summary)}</p>
        ))}
        {calendar?.notDated.map((line) => (
          <p key={line}>{line}</p>
        ))}
        {!calendar && <p>{words.noDates}</p>}
        {text !== undefined && (
          <Ways
            plain
            what={words.dates}
            name="dates.ics"
            type={calendarType}
            onGo={(way) => giveCalendar(model, text, way)}
          />
        )}
      </Section>
    </>
  );
}

interface WaysProps {
  readonly what: string;
  /** A file name and type such as the file will have. */
  readonly name: string;
  readonly type: string;
  /** One of several, none of which is the main thing to do here. */
  readonly plain?: boolean;
  readonly onGo: (way: Way) => Promise<void>;
}

/** Share, where there is a share sheet for such files, and save; what takes a while says so. */
function Ways({ what, name, type, plain = false, onGo }: WaysProps) {
  const [busy, setBusy] = useState(false);
  const go = async (way: Way): Promise<void> => {
    setBusy(true);
    try {
      await onGo(way);
    } catch {
      tell(words.notMade);
    } finally {
      setBusy(false);
    }
  };
  const shares = canShare(name, type);
  return (
    <div class={forms.stack}>
      {shares && (
        <Button look={plain ? 'normal' : 'main'} disabled={busy} onTap={() => void go('share')}>
          {words.share(what)}
        </Button>
      )}
      <Button look={shares || plain ? 'normal' : 'main'} disabled={busy} onTap={() => void go('save')}>
        {words.save(what)}
      </Button>
      {busy && <p role="status">{words.working}</p>}
    </div>
  );
}
