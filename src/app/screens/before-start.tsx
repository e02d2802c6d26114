import { useLocation } from 'preact-iso';
import { useState } from 'preact/hooks';
import { valueIn } from '../../core/assemble.ts';
import type { RecordKey } from '../../core/keys.ts';
import { loads, type LimitSheet } from '../../core/limits.ts';
import type { Machine } from '../../core/machine.ts';
import { ok } from '../../core/result.ts';
import { parseHours } from '../../core/typed.ts';
import { grounds, turnings } from '../../core/use.ts';
import { corners, depths, isRental, purposes, starts, type Walk } from '../../core/walk.ts';
import {
  cornerWords,
  depthWords,
  groundWords,
  loadWords,
  purposeWords,
  startWords,
  turningWords,
} from '../../words/en/choices.ts';
import { common } from '../../words/en/common.ts';
import { meterWentBack } from '../../words/en/questions.ts';
import { cleanlinessWords } from '../../words/en/sag.ts';
import { ambiguousAsk, typedErrorLines } from '../../words/en/typed.ts';
import { beforeStart as words } from '../../words/en/walk.ts';
import { startWalk } from '../actions/walk.ts';
import { loadBuiltIn } from '../data/built-in.ts';
import { formatter } from '../data/format.ts';
import { useLive, valueOf } from '../data/live.ts';
import { loadRental } from '../data/load-rental.ts';
import { fromPath, machinePath, sequenceStep, walkPath } from '../data/paths.ts';
import { tell } from '../data/notice.ts';
import { store } from '../data/phone.ts';
import { notSavedLine } from '../data/saving.ts';
import { useDraft } from '../data/use-draft.ts';
import { Button, ButtonLink } from '../parts/button.tsx';
import { Choices } from '../parts/choices.tsx';
import { Field } from '../parts/field.tsx';
import { Screen } from '../parts/screen.tsx';
import { TrackMap } from '../parts/track-map.tsx';
import { Gone } from './gone.tsx';
import { HelpDrawing } from './help-drawing.tsx';

const clean = ['clean', 'working-dirt', 'packed'] as const;

type Draft = Readonly<Record<string, string>>;

const start: Draft = {
  purpose: 'jobsite',
  depth: 'short',
  start: 'walk',
  corner: 'front-left',
  meterTyped: '',
};

/** Purpose and depth are all that a walk needs to begin; the rest is asked, never demanded. */
export function BeforeStart() {
  const { path } = useLocation();
  const at = fromPath('machine', path);
  const key = at?.key;
  const machine = valueOf(
    useLive(`start ${key}`, [key ?? ''], async () => {
      const found = key && (await store.read(key));
      return found && found.ok ? ok(valueIn<Machine>(found.value)) : ok(undefined);
    }),
  );
  if (!key) return <Gone />;
  return machine ? <Form machineKey={key} machine={machine} /> : <Screen title={common.loading}>{''}</Screen>;
}

/** The machine's own rule set, else the one that its sheet names, else the one that comes with the app. */
async function rulesOf(machine: Machine): Promise<string | undefined> {
  const { limits, rules } = await loadBuiltIn();
  const stored = machine.sheet === undefined ? undefined : await store.read(machine.sheet as RecordKey);
  const own = stored?.ok ? valueIn<LimitSheet>(stored.value) : undefined;
  const sheet = own ?? limits[machine.sheet ?? ''];
  return machine.rules ?? sheet?.rules ?? Object.keys(rules)[0];
}

function optionsOf<T extends string>(
  values: readonly T[],
  label: (value: T) => { readonly label: string; readonly line?: string } | string,
): readonly { value: T; label: string; line?: string }[] {
  return values.map((value) => {
    const words = label(value);
    return typeof words === 'string' ? { value, label: words } : { value, ...words };
  });
}

function Form({ machineKey, machine }: { machineKey: string; machine: Machine }) {
  const { route } = useLocation();
  const draftKey = `start/${machineKey}`;
  const [draft, setDraft] = useDraft<Draft>(draftKey, start);
  const [more, setMore] = useState(false);
  const [fault, setFault] = useState<string>();
  const set = (name: string) => (value: string) => setDraft({ ...draft, [name]: value });
  const pick = <T extends string>(
    name: string,
    title: string,
    options: readonly { value: T; label: string; line?: string }[],
  ) => (
    <Choices
      title={title}
      narrow={options.every(({ line }) => line === undefined)}
      chosen={draft[name] as T | undefined}
      options={options}
      onChoose={(value) => set(name)(value)}
    />
  );
  const go = async (): Promise<void> => {
    const meter = readMeter(draft['meterTyped'] ?? '');
    if (meter.fault !== undefined) return setFault(meter.fault);
    const room = await store.ensureReserve();
    if (!room.ok && room.error.kind === 'quota') return tell(words.noRoom);
    const texts = Object.fromEntries(Object.entries(draft).filter(([, value]) => value !== ''));
    const ruleKey = await rulesOf(machine);
    const walk = {
      ...texts,
      v: 1,
      machine: machineKey,
      ...(meter.hours !== undefined && { meterHours: meter.hours }),
      ...(machine.sheet !== undefined && { sheet: { key: machine.sheet } }),
      ...(ruleKey !== undefined && { rules: { key: ruleKey } }),
    } as unknown as Walk;
    const rents = isRental(walk.purpose);
    const led = rents ? await (await loadRental()).startOf(walk) : {};
    const started = await startWalk({ ...walk, ...led });
    if (!started.ok) return tell(notSavedLine(started.error));
    await store.drafts.delete(draftKey);
    // Asked after the first record and never waited for: some browsers leave the question open for ever.
    void navigator.storage?.persist?.().catch(() => false);
    route(walkPath(started.value, rents ? sequenceStep('plate') : undefined));
  };
  return (
    <Screen
      title={words.title}
      sub={machine.name}
      bar={
        <>
          <ButtonLink href={machinePath(machineKey)}>{common.back}</ButtonLink>
          <Button look="main" onTap={() => void go()}>
            {words.go}
          </Button>
        </>
      }
    >
      {pick(
        'purpose',
        words.purpose,
        optionsOf(purposes, (each) => purposeWords[each]),
      )}
      {pick(
        'depth',
        words.depth,
        optionsOf(depths, (each) => depthWords[each]),
      )}
      <Field
        label={words.meter}
        inputMode="decimal"
        value={draft['meterTyped'] ?? ''}
        fault={fault}
        hint={meterHint(machine, draft['meterTyped'] ?? '')}
        onInput={(value) => {
          setFault(undefined);
          set('meterTyped')(value);
        }}
      />
      <section>
        <strong>{words.front}</strong>
        {machine.kind === 'excavator' ? (
          <HelpDrawing id="front" />
        ) : (
          <TrackMap shape={machine.shape} side="left" />
        )}
        <p>{words.frontLine}</p>
      </section>
      {pick(
        'start',
        words.start,
        optionsOf(starts, (each) => startWords[each]),
      )}
      <Button look="plain" pressed={more} onTap={() => setMore(!more)}>
        {words.moreDetails}
      </Button>
      {more && (
        <>
          {pick(
            'corner',
            words.corner,
            optionsOf(corners, (each) => cornerWords[each]),
          )}
          {pick(
            'ground',
            words.ground,
            optionsOf(grounds, (each) => groundWords[each]),
          )}
          {pick(
            'turning',
            words.turning,
            optionsOf(turnings, (each) => turningWords[each]),
          )}
          {pick(
            'load',
            words.load,
            optionsOf(loads, (each) => loadWords[each]),
          )}
          {pick(
            'clean',
            words.clean,
            optionsOf(clean, (each) => cleanlinessWords[each]),
          )}
          {draft['clean'] === 'packed' && <p>{words.packedLine}</p>}
          {(['customer', 'site', 'jobNumber', 'contact', 'inspector'] as const).map((name) => (
            <Field key={name} label={words[name]} value={draft[name] ?? ''} onInput={set(name)} />
          ))}
        </>
      )}
    </Screen>
  );
}

function readMeter(typed: string): { readonly hours?: number; readonly fault?: string } {
  if (typed.trim() === '') return {};
  const parsed = parseHours(typed);
  if (parsed.ok) return { hours: parsed.value };
  const { error } = parsed;
  const format = formatter.value;
  if (error.kind === 'ambiguous') {
    const [one, other] = error.readings;
    return { fault: ambiguousAsk(format.hours(one), format.hours(other)) };
  }
  return { fault: typedErrorLines[error.kind] };
}

function meterHint(machine: Machine, typed: string): string | undefined {
  if (machine.meterHours === undefined) return undefined;
  const format = formatter.value;
  const now = parseHours(typed);
  if (now.ok && now.value < machine.meterHours) {
    return meterWentBack(format.hours(now.value), format.hours(machine.meterHours));
  }
  return words.meterLast(format.hours(machine.meterHours));
}
