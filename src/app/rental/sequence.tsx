import { useLocation } from 'preact-iso';
import { useEffect, useState } from 'preact/hooks';
import { unseenReasons } from '../../core/readings.ts';
import type { Shot } from '../../core/shots.ts';
import { unseenWords } from '../../words/en/choices.ts';
import { common } from '../../words/en/common.ts';
import { photos as photoWords } from '../../words/en/photos.ts';
import { sequence as words, shotWords } from '../../words/en/rental-walks.ts';
import { capital } from '../../words/outcome-text.ts';
import { changeWalk, hereKey } from '../actions/walk.ts';
import { tell } from '../data/notice.ts';
import { sequenceStep, walkPath } from '../data/paths.ts';
import { store } from '../data/phone.ts';
import { notSavedLine } from '../data/saving.ts';
import type { WalkModel } from '../data/walk-model.ts';
import { Button, ButtonLink, RowLink, RowText } from '../parts/button.tsx';
import { Choices } from '../parts/choices.tsx';
import { Screen } from '../parts/screen.tsx';
import { CautionGate } from '../screens/caution-gate.tsx';
import { TakeButtons } from '../photos/take-buttons.tsx';
import { Thumbnail } from '../photos/thumbnail.tsx';
import { useWalkPhotos, type WalkPhoto } from '../photos/walk-photos.ts';
import type { HandedOut } from './handed-out.ts';
import type { Rental } from './rental-model.ts';
import { useThenPhoto, WholePhoto } from './then-photo.tsx';
import forms from '../parts/forms.module.css';
import photoStyles from '../photos/photos.module.css';

interface SequenceProps {
  readonly model: WalkModel;
  readonly rest: readonly string[];
}

/** The photos of a rental walk in their order: one of them, or the list of all. */
export function Sequence({ model, rest }: SequenceProps) {
  const { rental } = model;
  if (!rental) return null;
  const shot = rental.shots.find(({ id }) => id === rest.slice(1).join('.'));
  // The photos come before the first question: so does what could hurt someone there.
  if (shot && model.walk.cautions?.includes('ground') !== true)
    return (
      <CautionGate
        model={model}
        cautions={['ground']}
        sub={words.title}
        back={walkPath(model.key, 'sequence')}
      />
    );
  return shot ? (
    <OneShot key={shot.id} {...{ model, rental, shot }} />
  ) : (
    <AllShots model={model} rental={rental} />
  );
}

const nameOf = (shot: Shot): string => capital(shotWords(shot).name);

/** Where the walk goes on once the photos are through. */
function pathAfterAll({ key, steps, progress }: WalkModel): string {
  const todo = steps.find(({ id }) => progress.get(id)?.state === 'todo');
  return walkPath(key, todo?.id ?? 'verdict');
}

/** The next photo that is missing, after this one or else from the start; undefined when none is. */
function nextMissing({ shots, missing }: Rental, shot?: Shot): Shot | undefined {
  const others = missing.filter(({ id }) => id !== shot?.id);
  const at = shots.findIndex(({ id }) => id === shot?.id);
  return shots.slice(at + 1).find((each) => others.includes(each)) ?? others[0];
}

interface AllShotsProps {
  readonly model: WalkModel;
  readonly rental: Rental;
}

function AllShots({ model, rental }: AllShotsProps) {
  const { shots, missing } = rental;
  const next = nextMissing(rental);
  return (
    <Screen
      title={words.title}
      sub={`${model.machine.name} · ${words.settled(shots.length - missing.length, shots.length)}`}
      bar={
        <>
          <ButtonLink href={walkPath(model.key, 'map')}>{common.back}</ButtonLink>
          <ButtonLink look="main" href={next ? pathOf(model, next) : pathAfterAll(model)}>
            {next ? words.goOn : words.toWalk}
          </ButtonLink>
        </>
      }
    >
      <p>{words.line}</p>
      {shots.map((shot) => (
        <RowLink key={shot.id} href={pathOf(model, shot)}>
          <RowText name={nameOf(shot)} line={stateLine(model, rental, shot)} />
        </RowLink>
      ))}
      {next && <ButtonLink href={pathAfterAll(model)}>{words.toWalk}</ButtonLink>}
    </Screen>
  );
}

const pathOf = ({ key }: WalkModel, { id }: Shot): string => walkPath(key, sequenceStep(id));

const whyLeftOut = ({ walk }: WalkModel, { id }: Shot) => walk.skipped?.find(({ shot }) => shot === id)?.why;

function stateLine(model: WalkModel, { taken }: Rental, shot: Shot): string {
  const why = whyLeftOut(model, shot);
  if (taken.has(shot.id)) return words.taken;
  return why === undefined ? words.missing : words.leftOut(unseenWords[why]);
}

interface OneShotProps extends AllShotsProps {
  readonly shot: Shot;
}

function OneShot({ model, rental, shot }: OneShotProps) {
  const { shots, missing, handOut } = rental;
  const here = sequenceStep(shot.id);
  useEffect(() => void store.drafts.put(hereKey(model.key), here), [model.key, here]);
  const at = shots.indexOf(shot);
  const before = shots[at - 1];
  const next = nextMissing(rental, shot);
  const photo = useWalkPhotos(model.key)
    ?.filter((each) => each.photo.shot === shot.id)
    .at(-1);
  const isSettled = photo !== undefined || !missing.includes(shot);
  return (
    <Screen
      title={nameOf(shot)}
      sub={`${words.nth(at + 1, shots.length)} · ${words.settled(shots.length - missing.length, shots.length)}`}
      bar={
        <>
          <ButtonLink href={before ? pathOf(model, before) : walkPath(model.key, 'sequence')}>
            {common.back}
          </ButtonLink>
          <ButtonLink
            look={isSettled ? 'main' : 'normal'}
            href={
              next ? pathOf(model, next) : isSettled ? pathAfterAll(model) : walkPath(model.key, 'sequence')
            }
          >
            {isSettled ? (next ? common.next : words.toWalk) : words.later}
          </ButtonLink>
        </>
      }
    >
      <progress
        class={forms.progress}
        aria-label={words.title}
        value={shots.length - missing.length}
        max={shots.length}
      />
      <p>{shotWords(shot).line}</p>
      {handOut && <Model handOut={handOut} shot={shot} />}
      <Mine model={model} shot={shot} photo={photo} />
      <LeaveOut model={model} shot={shot} isTaken={photo !== undefined} />
      <ButtonLink look="plain" href={walkPath(model.key, 'sequence')}>
        {words.all}
      </ButtonLink>
    </Screen>
  );
}

/** The hand-out's photo, to be taken again from the same place. */
function Model({ handOut, shot }: { handOut: HandedOut; shot: Shot }) {
  const then = useThenPhoto(handOut, shot.id);
  if (!then) return <p>{words.noneThen}</p>;
  return (
    <figure>
      <WholePhoto each={then} alt={words.thenAlt(shotWords(shot).name)} />
      <figcaption>{words.then(handOut.day)}</figcaption>
    </figure>
  );
}

interface MineProps {
  readonly model: WalkModel;
  readonly shot: Shot;
  readonly photo: WalkPhoto | undefined;
}

/** The photo of this walk, and the way to take it or take it again. */
function Mine({ model, shot, photo }: MineProps) {
  const step = sequenceStep(shot.id);
  const taken = { walk: model.key, shows: [shot.shows], shot: shot.id };
  return (
    <>
      {photo && (
        <div class={photoStyles.grid}>
          <Thumbnail walk={model.key} each={photo} from={step} line={photo.photo.note ?? ''} />
        </div>
      )}
      <TakeButtons
        single
        step={step}
        taken={photo ? { ...taken, replaces: photo.key } : taken}
        {...(photo && { labels: photoWords.retake })}
      />
    </>
  );
}

interface LeaveOutProps {
  readonly model: WalkModel;
  readonly shot: Shot;
  readonly isTaken: boolean;
}

/** Leaving a photo out, with the reason, and taking that back. */
function LeaveOut({ model, shot, isTaken }: LeaveOutProps) {
  const { route } = useLocation();
  const [asking, setAsking] = useState(false);
  const why = whyLeftOut(model, shot);
  const leave = async (reason: (typeof unseenReasons)[number] | undefined): Promise<void> => {
    const saved = await changeWalk(model.key, ({ skipped = [] }) => ({
      skipped: [
        ...skipped.filter(({ shot: id }) => id !== shot.id),
        ...(reason === undefined ? [] : [{ shot: shot.id, why: reason }]),
      ],
    }));
    if (!saved.ok) return tell(notSavedLine(saved.error));
    setAsking(false);
    const next = model.rental && nextMissing(model.rental, shot);
    if (reason !== undefined && next) route(pathOf(model, next));
  };
  if (isTaken) return null;
  if (why !== undefined) {
    return (
      <>
        <p>{capital(words.leftOut(unseenWords[why]))}</p>
        <Button look="plain" onTap={() => void leave(undefined)}>
          {words.takeAfterAll}
        </Button>
      </>
    );
  }
  return (
    <>
      <Button look="plain" pressed={asking} onTap={() => setAsking(!asking)}>
        {words.leaveOut}
      </Button>
      {asking && (
        <Choices
          title={words.why}
          narrow
          chosen={undefined}
          options={unseenReasons.map((value) => ({ value, label: unseenWords[value] }))}
          onChoose={(reason) => void leave(reason)}
        />
      )}
    </>
  );
}
