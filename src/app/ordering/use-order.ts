import { useMemo } from 'preact/hooks';
import { valueIn } from '../../core/assemble.ts';
import { isDemo, parseKey, prefixOf, type RecordKey } from '../../core/keys.ts';
import type { Machine } from '../../core/machine.ts';
import type { Outlook } from '../../core/outlook.ts';
import type { PartAt } from '../../core/part-facts.ts';
import { partsToOrder, type OrderLine, type PartsToOrder } from '../../core/parts-to-order.ts';
import { ok } from '../../core/result.ts';
import type { Version } from '../../core/versions.ts';
import type { Work } from '../../core/walk.ts';
import { useLive, valueOf } from '../data/live.ts';
import { store } from '../data/phone.ts';
import { useRecord } from '../data/record.ts';
import { toolUncertaintyOf } from '../data/tool.ts';
import { useAhead } from '../data/use-ahead.ts';
import type { WalkModel } from '../data/walk-model.ts';

/** The parts to order of a walk, from the machine's record as it is now. */
export interface OrderModel {
  readonly walk: WalkModel;
  readonly machineKey: RecordKey<'machine'>;
  readonly machine: Machine;
  readonly clash: readonly Version[];
  readonly outlook: Outlook;
  readonly order: PartsToOrder;
  /** The same for the machine as it has just been changed. */
  readonly orderFor: (machine: Machine) => PartsToOrder;
}

function useWork(machineKey: RecordKey<'machine'>): readonly Work[] | undefined {
  const parts = parseKey(machineKey);
  const owner = parts?.kind === 'machine' ? parts.id : undefined;
  const prefix = prefixOf('work', { ...(owner && { owner }), demo: isDemo(machineKey) });
  const live = useLive(`work ${machineKey}`, [prefix], async () => {
    const rows = await store.list({ prefix });
    return rows.ok ? ok(rows.value.flatMap(({ versions }) => valueIn<Work>(versions) ?? [])) : rows;
  });
  return valueOf(live);
}

/** Undefined until all of it is there, `failed` where the plan could not be worked out. */
export function useOrder(walk: WalkModel): OrderModel | 'failed' | undefined {
  const machineKey = walk.walk.machine as RecordKey<'machine'>;
  const ahead = useAhead(walk);
  const found = valueOf(useRecord<Machine>(machineKey));
  const work = useWork(machineKey);
  const [machine, clash] = [found?.value, found?.clash];
  return useMemo(() => {
    if (ahead === 'failed') return 'failed';
    if (!ahead || !machine || !clash || !work) return undefined;
    const { outlook } = ahead;
    const orderFor = (of: Machine): PartsToOrder =>
      partsToOrder({
        machine: of,
        outcomes: walk.scored.outcomes,
        sheets: walk.assembled.input.sheets,
        work,
        tools: toolUncertaintyOf(walk),
        plan: outlook.plan,
        walk: walk.key,
      });
    const order = orderFor(machine);
    return { walk, machineKey, machine, clash, outlook, order, orderFor };
  }, [walk, machineKey, ahead, machine, clash, work]);
}

/** Every line that is to be ordered. */
export const linesOf = ({ groups }: PartsToOrder) => groups.flatMap(({ lines }) => lines);

/** Where a line's facts stand; a part of the whole machine has none. */
export function placeOf({ kind, side, numbers }: OrderLine): PartAt | undefined {
  const [number] = numbers.length === 1 ? numbers : [];
  return side === 'whole' ? undefined : { kind, side, number };
}
