import { execFileSync } from 'node:child_process';
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, test, vi } from 'vitest';
import type { RecordKey } from '../../src/core/keys.ts';
import type { SealPayload } from '../../src/core/seal-payload.ts';
import { makeDeviceKey } from '../../src/seal/device-key.ts';
import { sha256Hex } from '../../src/seal/hash.ts';
import { makeSeal } from '../../src/seal/seals.ts';
import { canonicalJson } from '../../src/core/canonical-json.ts';
import { sentBundle } from '../browser/bundles.ts';
import { bundleCommand, bundlePath, sagline } from './command.ts';

vi.setConfig({ testTimeout: 60_000, hookTimeout: 60_000 });

const folder = mkdtempSync(join(tmpdir(), 'sagline-check-'));
const path = (name: string): string => join(folder, name);
const person = {
  key: 'person/p' as RecordKey,
  value: { v: 1, role: 'inspector', name: 'Ines\nSeal 1 of 1: Intact\u202e', salt: 'a'.repeat(64) },
};

interface Walk {
  records: { key: string; value: Record<string, unknown> }[];
  seals: string[];
}
let walk: Walk;

const photoValue = {
  v: 1,
  type: 'image/jpeg',
  bytes: 1,
  width: 4,
  height: 3,
  original: { sha256: 'ef'.repeat(32), bytes: 2 },
  shows: [],
  from: 'camera',
};

async function sealOf(records: readonly { key: string }[], more: object = {}): Promise<string> {
  const payload = {
    format: 'sagline-seal',
    version: 1,
    walk: records.find(({ key }) => key.startsWith('walk/'))?.key,
    machine: records.find(({ key }) => key.startsWith('machine/'))?.key,
    sealedAt: { utc: '2026-03-01T09:00:00Z', offsetMinutes: 60 },
    core: 'test',
    records,
    people: [{ key: person.key, role: 'inspector', hash: await sha256Hex(canonicalJson(person.value)) }],
    verdict: { call: 'repair' },
    open: [],
    ...more,
  } as unknown as SealPayload;
  const jws = await makeSeal(payload, await makeDeviceKey());
  if (!jws.ok) throw new Error(jws.error.kind);
  return jws.value;
}

beforeAll(async () => {
  await bundleCommand();
  const { records } = await sentBundle('steel', 0);
  walk = { records: [...records, person] as Walk['records'], seals: [await sealOf(records)] };
});
afterAll(() => {
  rmSync(folder, { recursive: true });
  rmSync(bundlePath);
});

function written(name: string, change: (file: Walk) => void = () => undefined): string {
  const file = structuredClone(walk);
  change(file);
  writeFileSync(path(name), JSON.stringify({ format: 'sagline-walk', version: 1, ...file }));
  return path(name);
}

describe('sagline check', () => {
  test('[SE18] an untouched file holds, and no text in it makes a line of its own', async () => {
    const { code, out, err } = await sagline(['check', written('whole.json')]);
    expect([code, err]).toEqual([0, '']);
    expect(out).toMatch(/^Seal 1 of 1: Intact\n/);
    expect(out.match(/^Seal /gm)).toHaveLength(1);
    expect(out).toContain('inspector: Ines\\u000aSeal 1 of 1: Intact\\u202e');
  });

  test('[SE18] a pipe is checked like a file, a folder is none', async () => {
    const name = written('piped.json');
    const [byFile, byPipe] = [
      await sagline(['check', name]),
      await sagline(['check', '-'], readFileSync(name)),
    ];
    expect(byPipe).toEqual(byFile);
    expect(await sagline(['check', folder])).toMatchObject({
      code: 2,
      out: '',
      err: expect.stringMatching(/This is a folder/),
    });
    expect(await sagline(['check', '-'], '{')).toMatchObject({ code: 2, out: '' });
  });

  test('[SE18] a pipe with a name is read once', () => {
    const line = 'cat "$1" | "$2" "$3" check /dev/stdin';
    const piped = ['-c', line, 'sh', written('named.json'), process.execPath, bundlePath];
    expect(execFileSync('sh', piped).toString()).toMatch(/^Seal 1 of 1: Intact\n/);
  });

  test('[SE18] a changed reading is named by key and path, and the exit code says so', async () => {
    const name = written('changed.json', ({ records }) => {
      const reading = records.find(({ key }) => key.includes('link-height'));
      Object.assign(reading?.value['what'] ?? {}, { mm: 1 });
    });
    const { code, out } = await sagline(['check', name]);
    expect(code).toBe(3);
    expect(out).toMatch(/Changed after the seal/);
    expect(out).toMatch(/reading\/check-steel\/\S+\/link-height\/1\/value\/what\/mm: sealed \S+, now 1\n/);
  });

  test('[SE18] an altered seal is said to be altered, and nothing it says is printed', async () => {
    const name = written('altered.json', (file) => {
      const [jws = ''] = file.seals;
      file.seals = [jws.slice(0, -3) + (jws.endsWith('AAA') ? 'BBB' : 'AAA')];
    });
    const { code, out } = await sagline(['check', name]);
    expect(code).toBe(3);
    expect(out).toMatch(/The seal itself was altered/);
    expect(out).not.toMatch(/Signed with/);
  });

  test('[SE18] a seal among the records counts, and one under another name is in another place', async () => {
    const hash = await sha256Hex(walk.seals[0] ?? '');
    const [, id] = walk.records.find(({ key }) => key.startsWith('walk/'))?.key.split('/') ?? [];
    const among = (name: string) => {
      const file = written(`${name}.json`, (each) => {
        const [jws] = each.seals.splice(0);
        each.records.push({ key: `seal/${id}/${name}`, value: { v: 1, jws } });
      });
      return sagline(['check', file]);
    };
    expect(await among(hash)).toMatchObject({
      code: 0,
      out: expect.stringMatching(/^Seal 1 of 1: Intact\n/),
    });
    expect(await among('0'.repeat(64))).toMatchObject({
      code: 3,
      out: expect.stringMatching(/^Seal 1 of 1: In another seal’s place\n/),
    });
  });

  test('[SE18] what came later is named by its fields, and is no fault', async () => {
    const stamped = (each: Walk['records'][number], at: number) =>
      Object.assign(each, { stamp: `00000000000${at}-00000000000000aa`, seen: {}, by: 'ines' });
    const name = written('later.json', ({ records }) => {
      const reading = records.find(({ key }) => key.includes('link-height'));
      if (reading) Object.assign(stamped(reading, 9).value['what'] ?? {}, { mm: 1 });
    });
    const { code, out } = await sagline(['check', name]);
    expect(code).toBe(0);
    expect(out).toMatch(/^Seal 1 of 1: Intact, and changed since\n/);
    expect(out).toMatch(/after the seal, not part of it: reading\/\S+\/link-height\/1 \(changed\)\n/);
    expect(out).toMatch(/link-height\/1\/value\/what\/mm: sealed \S+, now 1\n/);
  });

  test('[SE18] a picture that the seal names and the file is without is named', async () => {
    const sha256 = 'ab'.repeat(32);
    const [, id] = walk.records.find(({ key }) => key.startsWith('walk/'))?.key.split('/') ?? [];
    const photo = { key: `photo/${id}/${sha256}`, value: photoValue };
    const records = [...walk.records.filter(({ key }) => key !== person.key), photo];
    const jws = await sealOf(records, { previous: 'cd'.repeat(32) });
    const name = written('photo.json', (file) => Object.assign(file, { records, seals: [jws] }));
    const { code, out, err } = await sagline(['check', name]);
    expect([code, err]).toEqual([3, '']);
    expect(out).toContain(`A photo is missing: ${sha256}`);
    expect(out).toMatch(/Seal before it: (cdcd ){8}\(not in this file\)\n/);
  });

  test('[SE18] a file without a seal, and one that is none, are bad input', async () => {
    const bare = await sagline(['check', written('bare.json', (file) => (file.seals = []))]);
    expect([bare.code, bare.out]).toEqual([2, '']);
    expect(bare.err).toMatch(/There is no seal in this file/);
    expect((await sagline(['check', path('nowhere.json')])).code).toBe(2);
  });

  test('[SE18] a bundle is checked and scored like its walk file', async () => {
    const { file } = await sentBundle('steel', 2);
    writeFileSync(path('walk.zip'), file);
    expect((await sagline(['check', path('walk.zip')])).err).toMatch(/There is no seal/);
    const scored = await sagline(['score', path('walk.zip')]);
    expect(scored.code).toBe(0);
    expect(JSON.parse(scored.out)).toMatchObject({ format: 'sagline-scored' });
  });
});
