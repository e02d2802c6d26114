import { isDemo } from '../../core/keys.ts';
import { isToLookAt, placeOfFact } from '../../core/part-facts.ts';
import type { OrderGroup } from '../../core/parts-to-order.ts';
import { jobText } from '../../words/ahead-text.ts';
import { ordering as words } from '../../words/en/ordering.ts';
import { verdict } from '../../words/en/verdict.ts';
import { capital } from '../../words/outcome-text.ts';
import { walkPath } from '../data/paths.ts';
import { ButtonLink } from '../parts/button.tsx';
import forms from '../parts/forms.module.css';
import { Screen, Section } from '../parts/screen.tsx';
import { ClashNotice } from '../screens/clash-notice.tsx';
import { describeMachine } from '../screens/machine-facts.tsx';
import { LineCard } from './line-card.tsx';
import { PinCard } from './pin-card.tsx';
import { TableWays } from './table-ways.tsx';
import { linesOf, placeOf, type OrderModel } from './use-order.ts';
import { whenTitle } from './when-text.ts';

/** The parts to order by visit, with what still has to be looked at on top. */
export function OrderList({ order }: { order: OrderModel }) {
  const { walk, machineKey, clash } = order;
  const lines = linesOf(order.order);
  const missing = toLookAt(order) + (order.machine.pin === undefined ? 1 : 0);
  return (
    <Screen
      wide
      title={words.title}
      sub={walk.machine.name}
      bar={
        <>
          <ButtonLink href={walkPath(walk.key, 'verdict')}>{verdict.title}</ButtonLink>
          <ButtonLink look="main" href={walkPath(walk.key, 'order.page')}>
            {words.page}
          </ButtonLink>
        </>
      }
    >
      <ClashNotice recordKey={machineKey} clash={clash} describe={describeMachine} />
      <p>{words.line}</p>
      {lines.length === 0 ? (
        <p>{words.nothing}</p>
      ) : (
        <p class={forms.strong}>{missing === 0 ? words.allKnown : words.toLook(missing)}</p>
      )}
      <PinCard key={order.machine.pin ?? ''} order={order} />
      {order.order.groups.map((group) => (
        <Group key={JSON.stringify(group.when)} group={group} order={order} />
      ))}
      <Partless order={order} />
      {isDemo(walk.key) ? <p class={forms.soft}>{words.demo}</p> : <TableWays order={order} />}
    </Screen>
  );
}

function Group({ group, order }: { group: OrderGroup; order: OrderModel }) {
  return (
    <Section title={whenTitle(group.when, order)}>
      <div class={forms.columns}>
        {group.lines.map((line) => (
          <LineCard key={line.id} line={line} order={order} />
        ))}
      </div>
    </Section>
  );
}

/** What two parts share, as bolts and their shoes do, is one thing to look at. */
function toLookAt({ order, machine }: OrderModel): number {
  const things = linesOf(order).flatMap((line) => {
    const at = line.out ? undefined : placeOf(line);
    const open = at ? line.facts.filter(isToLookAt) : [];
    return open.map(({ name }) => JSON.stringify([name, at && placeOfFact(name, at, machine)]));
  });
  return new Set(things).size;
}

/** Work that the plan holds and that takes no part, so that nothing is missed. */
function Partless({ order }: { order: OrderModel }) {
  const { partless } = order.order;
  if (partless.length === 0) return null;
  return (
    <Section title={words.partless}>
      <ul>
        {partless.map((job) => (
          <li key={job.id}>{capital(jobText({ job }))}</li>
        ))}
      </ul>
    </Section>
  );
}
