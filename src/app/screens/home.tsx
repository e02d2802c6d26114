import { useLocation } from 'preact-iso';
import { useEffect, useState } from 'preact/hooks';
import { isDemo } from '../../core/keys.ts';
import type { Machine } from '../../core/machine.ts';
import { machineKindWords, purposeWords, trackKindWords } from '../../words/en/choices.ts';
import { home as words } from '../../words/en/home.ts';
import { persistence } from '../../words/en/storage.ts';
import { entry } from '../../words/entry.ts';
import { makeDates } from '../../words/dates.ts';
import { addDemo, removeDemo } from '../actions/demo.ts';
import { preferences } from '../data/preferences.ts';
import { isInstalled, isIos } from '../data/install.ts';
import { homeLists, type HomeLists } from '../data/lists.ts';
import { useLive, valueOf } from '../data/live.ts';
import { pendingPhotoNow } from '../data/pending-photo.ts';
import { machinePath, walkPath } from '../data/paths.ts';
import { Button, ButtonLink, RowLink, RowText } from '../parts/button.tsx';
import { Field } from '../parts/field.tsx';
import { Screen, Section } from '../parts/screen.tsx';
import { BackupNotice } from './backup-notice.tsx';
import { UpdateOffer } from '../parts/update-offer.tsx';
import styles from '../parts/parts.module.css';

/** From here on a list of machines is easier to search than to scroll. */
const searchFrom = 8;

/** After the phone ended the app while the camera was open: back to where the picture was to be taken, once. */
let askedForPhoto = false;
function useBackToPhoto(): void {
  const { route } = useLocation();
  useEffect(() => {
    if (askedForPhoto) return;
    askedForPhoto = true;
    void pendingPhotoNow(Date.now()).then((pending) => {
      if (pending && location.pathname === '/') route(walkPath(pending.walk, pending.step), true);
    });
  }, [route]);
}

/** Walks to go on with, machines, and for a new user what to do first. */
export function Home() {
  useBackToPhoto();
  const lists = valueOf(useLive('home', ['machine/', 'walk/', 'demo/'], homeLists));
  return (
    <Screen
      title={words.title}
      bar={
        <ButtonLink look="main" href="/machine/new">
          {words.addMachine}
        </ButtonLink>
      }
    >
      <UpdateOffer />
      <BackupNotice />
      {isIos && !isInstalled() && (
        <p class={styles.banner} role="status">
          {persistence.iosTab}
        </p>
      )}
      {lists && <Lists lists={lists} />}
      <div class={styles.group}>
        <ButtonLink look="plain" href="/tracks">
          {words.tracks}
        </ButtonLink>
        <ButtonLink look="plain" href="/sheets">
          {words.sheets}
        </ButtonLink>
        <ButtonLink look="plain" href="/prices">
          {words.prices}
        </ButtonLink>
        <ButtonLink look="plain" href="/rules">
          {words.rules}
        </ButtonLink>
        <ButtonLink look="plain" href="/settings">
          {words.settings}
        </ButtonLink>
      </div>
    </Screen>
  );
}

function Lists({ lists }: { lists: HomeLists }) {
  const [search, setSearch] = useState('');
  const wanted = search.trim().toLowerCase();
  const fits = ({ name, pin }: Machine): boolean => `${name} ${pin ?? ''}`.toLowerCase().includes(wanted);
  const machines = lists.machines.filter(({ value }) => fits(value));
  const nameOf = (key: string): string => lists.machines.find((each) => each.key === key)?.value.name ?? key;
  const dates = makeDates(preferences.value.locale);
  const demo = (key: string) => isDemo(key) && <span class={styles.mark}>{words.demoMark}</span>;
  return (
    <>
      {lists.walks.length > 0 && (
        <Section title={words.walksOpen}>
          {lists.walks.map(({ key, value }) => (
            <RowLink key={key} href={walkPath(key)}>
              <RowText
                name={nameOf(value.machine)}
                line={`${entry(purposeWords, value.purpose)?.label ?? ''}${value.startedAt ? `, ${words.startedOn(dates.moment(value.startedAt))}` : ''}`}
              />
              {demo(key) || <strong>{words.goOn}</strong>}
            </RowLink>
          ))}
        </Section>
      )}
      <Section title={words.machines}>
        {lists.machines.length === 0 && <p>{words.noMachines}</p>}
        {lists.machines.length >= searchFrom && (
          <Field label={words.search} value={search} inputMode="search" onInput={setSearch} />
        )}
        {lists.machines.length > 0 && machines.length === 0 && <p>{words.noneFound}</p>}
        {machines.map(({ key, value }) => (
          <RowLink key={key} href={machinePath(key)}>
            <RowText name={value.name} line={machineLine(value)} />
            {demo(key)}
          </RowLink>
        ))}
      </Section>
      <div class={styles.section}>
        {lists.hasDemo ? (
          <Button look="plain" onTap={() => void removeDemo()}>
            {words.removeDemo}
          </Button>
        ) : (
          <Button onTap={() => void addDemo()}>{words.demo}</Button>
        )}
        <p class={styles.sub}>{words.demoLine}</p>
      </div>
    </>
  );
}

// One damaged record must not take the list away: what it does not say is left out.
const machineLine = ({ kind, shape }: Machine): string =>
  [entry(machineKindWords, kind), entry(trackKindWords, shape.track)?.label].filter(Boolean).join(', ');
