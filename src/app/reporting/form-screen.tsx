import { useLocation } from 'preact-iso';
import { useState } from 'preact/hooks';
import { valueIn, type BuiltIn } from '../../core/assemble.ts';
import { parseKey } from '../../core/keys.ts';
import type { LimitSheet } from '../../core/limits.ts';
import type { Machine } from '../../core/machine.ts';
import { ok } from '../../core/result.ts';
import { depths, type Depth } from '../../core/walk.ts';
import { formOf } from '../../report/build-form.ts';
import { common } from '../../words/en/common.ts';
import { depthWords } from '../../words/en/choices.ts';
import { paperForm as words } from '../../words/en/report.ts';
import { beforeStart } from '../../words/en/walk.ts';
import { loadBuiltIn } from '../data/built-in.ts';
import { formatter } from '../data/format.ts';
import { useLive, valueOf } from '../data/live.ts';
import { fromPath, machinePath } from '../data/paths.ts';
import { store } from '../data/phone.ts';
import { preferences } from '../data/preferences.ts';
import { Choices } from '../parts/choices.tsx';
import { Screen } from '../parts/screen.tsx';
import { Gone } from '../screens/gone.tsx';
import { PaperScreen } from './paper-screen.tsx';

interface Blank {
  readonly machine: Machine;
  readonly sheets: Readonly<Record<'left' | 'right', LimitSheet | undefined>>;
}

async function sheetOf(key: string | undefined, builtIn: BuiltIn): Promise<LimitSheet | undefined> {
  if (key === undefined || parseKey(key)?.kind !== 'limits') return undefined;
  const found = await store.read(key as Parameters<typeof store.read>[0]);
  return (found.ok ? valueIn<LimitSheet>(found.value) : undefined) ?? builtIn.limits[key];
}

/** A blank form of a machine, to be printed and filled in by hand. */
export function FormScreen() {
  const { path } = useLocation();
  const key = fromPath('machine', path)?.key;
  const [depth, setDepth] = useState<Depth>('full');
  const blank = useLive(`form ${key}`, [key ?? ''], async () => {
    const found = key && (await store.read(key));
    if (!found) return ok(undefined);
    if (!found.ok) return found;
    const machine = valueIn<Machine>(found.value);
    const builtIn = await loadBuiltIn();
    const sheet = (side: 'left' | 'right') => sheetOf(machine?.[side]?.sheet ?? machine?.sheet, builtIn);
    return ok(machine && { machine, sheets: { left: await sheet('left'), right: await sheet('right') } });
  });
  if (blank === undefined) return <Screen title={common.loading}>{null}</Screen>;
  const here: Blank | undefined = valueOf(blank);
  if (key === undefined || here === undefined) return <Gone />;
  const walk = {
    v: 1,
    machine: key,
    purpose: 'jobsite',
    depth,
    start: 'walk',
    corner: 'front-left',
  } as const;
  const report = formOf({
    input: { ...here, walk, readings: [] },
    format: formatter.value,
    units: preferences.value,
  });
  return (
    <PaperScreen
      report={report}
      back={machinePath(key)}
      backWord={words.back}
      more={
        <Choices
          title={beforeStart.depth}
          options={depths.map((value) => ({ value, ...depthWords[value] }))}
          chosen={depth}
          onChoose={setDepth}
        />
      }
    />
  );
}
