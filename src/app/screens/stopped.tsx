import { storageStates, type StorageState } from '../../words/en/storage.ts';
import { Screen } from '../parts/screen.tsx';

/** Where the app cannot keep what is entered it says so and goes no further, rather than half work. */
export function Stopped({ state }: { state: StorageState }) {
  const { title, line } = storageStates[state];
  return (
    <Screen title={title}>
      <p>{line}</p>
    </Screen>
  );
}
