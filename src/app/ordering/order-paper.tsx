import { useMemo } from 'preact/hooks';
import { isDemo } from '../../core/keys.ts';
import { orderPageOf } from '../../report/build-order.ts';
import { makeDates } from '../../words/dates.ts';
import { ordering as words } from '../../words/en/ordering.ts';
import { formatter } from '../data/format.ts';
import { walkPath } from '../data/paths.ts';
import { preferences } from '../data/preferences.ts';
import { PaperScreen } from '../reporting/paper-screen.tsx';
import type { OrderModel } from './use-order.ts';
import { whenTitle } from './when-text.ts';

/** The list as a page that a parts desk can read: to print, as a PDF, or to send. */
export function OrderPaper({ order }: { order: OrderModel }) {
  const { walk, machine } = order;
  const [format, units] = [formatter.value, preferences.value];
  const report = useMemo(
    () =>
      orderPageOf({
        machine,
        walk: walk.walk,
        order: order.order,
        whenText: (when) => whenTitle(when, order),
        invented: isDemo(walk.key),
        format,
        units,
        dates: makeDates(units.locale),
      }),
    [order, machine, walk, format, units],
  );
  return <PaperScreen report={report} back={walkPath(walk.key, 'order')} backWord={words.back} />;
}
