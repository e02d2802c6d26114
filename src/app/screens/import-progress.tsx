import { files as words } from '../../words/en/files.ts';
import { formatter } from '../data/format.ts';
import { LongWork } from './long-work.tsx';

/** How much of a file has been read. */
export const ImportProgress = ({ share, onCancel }: { share: number; onCancel: () => void }) => (
  <LongWork
    line={words.checkedShare(formatter.value.percent(share * 100))}
    share={share}
    onCancel={onCancel}
  />
);
