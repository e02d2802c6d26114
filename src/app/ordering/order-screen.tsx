import { lazy } from 'preact-iso';
import { isFactName } from '../../core/part-kinds.ts';
import { common } from '../../words/en/common.ts';
import { ordering as words } from '../../words/en/ordering.ts';
import { verdict } from '../../words/en/verdict.ts';
import { walkPath } from '../data/paths.ts';
import type { WalkModel } from '../data/walk-model.ts';
import { ButtonLink } from '../parts/button.tsx';
import { Screen } from '../parts/screen.tsx';
import { FactScreen } from './fact-screen.tsx';
import { OrderList } from './order-list.tsx';
import { linesOf, useOrder, type OrderModel } from './use-order.ts';

const Paper = lazy(() => import('./order-paper.tsx').then((each) => each.OrderPaper));

interface OrderProps {
  readonly model: WalkModel;
  /** What follows the walk in the address: `order`, then a line and one of its facts, or `page`. */
  readonly rest: readonly string[];
}

/** Parts to order: the list, a question about one fact of one part, or the page for the parts desk. */
export function Order({ model, rest }: OrderProps) {
  const order = useOrder(model);
  if (typeof order !== 'object') return <Waiting model={model} failed={order === 'failed'} />;
  if (rest[1] === 'page') return <Paper order={order} />;
  return <Place order={order} rest={rest.slice(1)} />;
}

function Place({ order, rest }: { order: OrderModel; rest: readonly string[] }) {
  const line = linesOf(order.order).find(({ id }) => id === rest.slice(0, -1).join('.'));
  const name = rest.at(-1) ?? '';
  const fact = isFactName(name) ? line?.facts.find((each) => each.name === name) : undefined;
  if (!line || !fact) return <OrderList order={order} />;
  return <FactScreen key={`${line.id} ${name}`} order={order} line={line} fact={fact} />;
}

function Waiting({ model, failed }: { model: WalkModel; failed: boolean }) {
  const bar = <ButtonLink href={walkPath(model.key, 'verdict')}>{verdict.title}</ButtonLink>;
  return (
    <Screen title={words.title} sub={model.machine.name} bar={bar}>
      <p role="status">{failed ? words.failed : common.loading}</p>
    </Screen>
  );
}
