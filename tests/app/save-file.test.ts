import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';
import { fileNameOf, saveFile } from '../../src/app/data/save-file.ts';

const file = { name: 'walk.json', type: 'application/json', parts: ['{}'] };
const downloads: string[] = [];

function onInstalledPhone(share: (data: { files: File[] }) => Promise<void>): void {
  vi.stubGlobal('navigator', { standalone: true, share });
}

const named = (name: string): Error => Object.assign(new Error(name), { name });

beforeEach(() => {
  downloads.length = 0;
  vi.spyOn(HTMLAnchorElement.prototype, 'click').mockImplementation(function (this: HTMLAnchorElement) {
    downloads.push(this.download);
  });
  vi.stubGlobal('URL', { createObjectURL: () => 'blob:x', revokeObjectURL: () => undefined });
});
afterEach(() => {
  vi.unstubAllGlobals();
  vi.restoreAllMocks();
});

describe('handing a file over', () => {
  it('[A12] in a browser it is a download', async () => {
    expect(await saveFile(file)).toBe('saved');
    expect(downloads).toEqual(['walk.json']);
  });

  it('[A12] installed on an iPhone it is shared from memory and nothing navigates', async () => {
    const shared: File[] = [];
    onInstalledPhone(async ({ files }) => void shared.push(...files));
    expect(await saveFile(file)).toBe('saved');
    expect(shared.map(({ name }) => name)).toEqual(['walk.json']);
    expect(downloads).toEqual([]);
  });

  it.each([
    ['AbortError', 'cancelled', []],
    ['NotAllowedError', 'tap-again', []],
    ['TypeError', 'saved', ['walk.json']],
  ] as const)('[A12] a share that ends in %s is %s', async (name, answer, downloaded) => {
    onInstalledPhone(() => Promise.reject(named(name)));
    expect(await saveFile(file)).toBe(answer);
    expect(downloads).toEqual(downloaded);
  });

  it.each([
    ['Yard 7 / Digger', 'yard-7-digger'],
    ['../../etc', 'etc'],
    ['Größe 中', 'größe-中'],
  ])('[A12] %s is a file called %s', (text, name) => {
    expect(fileNameOf(text)).toBe(name);
  });
});
