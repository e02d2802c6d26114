import { useState } from 'preact/hooks';
import { ordering as words } from '../../words/en/ordering.ts';
import type { Way } from '../actions/files.ts';
import { tell } from '../data/notice.ts';
import { canShare } from '../data/save-file.ts';
import { Button } from '../parts/button.tsx';
import forms from '../parts/forms.module.css';
import { Section } from '../parts/screen.tsx';
import type { OrderModel } from './use-order.ts';

/** The list as a table, shared or kept as a file; what makes it is loaded when it is asked for. */
export function TableWays({ order }: { order: OrderModel }) {
  const [busy, setBusy] = useState(false);
  const give = async (way: Way): Promise<void> => {
    setBusy(true);
    try {
      const { giveOrder } = await import('./give-order.ts');
      await giveOrder(order, way);
    } catch {
      tell(words.notMade);
    } finally {
      setBusy(false);
    }
  };
  return (
    <Section title={words.table}>
      <p>{words.tableLine}</p>
      <div class={forms.pair}>
        {canShare('parts.csv', 'text/csv') && (
          <Button disabled={busy} onTap={() => void give('share')}>
            {words.shareTable}
          </Button>
        )}
        <Button disabled={busy} onTap={() => void give('save')}>
          {words.saveTable}
        </Button>
      </div>
      {busy && <p role="status">{words.working}</p>}
    </Section>
  );
}
