import { mergeVersions, restamp, type NewIdentity, type Version } from '../core/versions.ts';
import { recordRow } from './record-row.ts';
import type { RecordTransaction } from './revision.ts';

/** Gives what has never left this device the device's new id; of a joined one that is what its outbox names. */
export async function restampUnsent(
  tx: RecordTransaction,
  identity: NewIdentity,
  joined: boolean,
): Promise<void> {
  const outbox = tx.objectStore('outbox');
  const waiting = new Set((await outbox.getAllKeys()).map(String));
  const isUnsent = ({ key, stamp }: Version): boolean => !joined || waiting.has(String([key, stamp]));
  let cursor = await tx.objectStore('versions').openCursor();
  while (cursor !== null) {
    const { key, versions } = cursor.value;
    const renewed = versions.map((one) => (isUnsent(one) ? restamp(one, identity) : one));
    for (const [at, old] of versions.entries()) {
      const now = renewed[at];
      if (now === undefined || now.stamp === old.stamp || !joined) continue;
      await outbox.delete([key, old.stamp]);
      await outbox.put({ key, stamp: now.stamp });
    }
    if (renewed.some((one, at) => one !== versions[at]))
      await cursor.update(recordRow(key, mergeVersions(renewed)));
    cursor = await cursor.continue();
  }
}
