import { useMemo } from 'preact/hooks';
import { isDemo, type RecordKey } from '../../core/keys.ts';
import type { Person } from '../../core/person.ts';
import { ok } from '../../core/result.ts';
import type { SealView } from '../../files/seal-view.ts';
import { toldBy } from '../../reference/wear-or-damage.ts';
import { buildCharge, type ChargeWalk } from '../../report/build-charge.ts';
import { makeDates } from '../../words/dates.ts';
import { charge as words } from '../../words/en/charge.ts';
import { common } from '../../words/en/common.ts';
import { formatter } from '../data/format.ts';
import { useLive, valueOf } from '../data/live.ts';
import { walkPath } from '../data/paths.ts';
import { preferences } from '../data/preferences.ts';
import { loadWalk, type WalkModel } from '../data/walk-model.ts';
import { Screen } from '../parts/screen.tsx';
import { PaperScreen } from '../reporting/paper-screen.tsx';
import { peopleOf, sealOf } from '../reporting/seal-facts.ts';
import { sealsFor, useSeals } from '../sealing/use-seals.ts';
import type { Charge } from './load-charge.ts';
import { isAnew, signedCharge, signedSum } from './signed-charge.ts';

/** Who walked and how the walk was sealed, from its seals. */
const walkOf = (seals: readonly SealView[], inspector: string | undefined): ChargeWalk => {
  const last = seals.at(-1);
  const who = peopleOf(seals).find(({ role }) => role === 'inspector')?.name;
  return { by: who ?? inspector, seal: last && sealOf(last) };
};

/** Who walked at hand-out, and its seal. */
const useHandOut = (charge: Charge) => {
  const { handOut } = charge.input;
  const key = handOut?.key as RecordKey<'walk'> | undefined;
  return useLive(`hand-out ${key}`, ['seal/', 'person/'], async () => {
    const model = key === undefined ? undefined : await loadWalk(key);
    if (!model?.ok) return ok(undefined);
    const seals = await sealsFor(model.value, 'records');
    return ok(walkOf(seals.ok ? seals.value.all : [], model.value.walk.inspector));
  });
};

/** The charge list on paper and as a PDF. */
export function ChargePage({ model, charge }: { model: WalkModel; charge: Charge }) {
  const seals = useSeals(model, 'all');
  const handOut = useHandOut(charge);
  const [format, { locale }] = [formatter.value, preferences.value];
  const report = useMemo(() => {
    if (seals === undefined || handOut === undefined) return undefined;
    const all = seals === 'failed' ? [] : seals.all;
    const people: readonly Person[] = peopleOf(all);
    const signed = signedCharge(all);
    return buildCharge({
      anew: signed && isAnew(charge.list, signed) ? signedSum(signed, format) : undefined,
      gone: charge.contractGone,
      list: charge.list,
      input: charge.input,
      agreed: charge.contractKey !== undefined,
      invented: isDemo(model.key),
      handOut: valueOf(handOut),
      returned: walkOf(all, model.walk.inspector),
      people,
      seals: seals === 'failed' ? 'not-checked' : all.map(sealOf),
      toldBy,
      format,
      dates: makeDates(locale),
    });
  }, [model, charge, seals, handOut, format, locale]);
  const back = walkPath(model.key, 'charge');
  if (report) return <PaperScreen report={report} back={back} backWord={words.back} />;
  return (
    <Screen title={words.title}>
      <p role="status">{common.loading}</p>
    </Screen>
  );
}
