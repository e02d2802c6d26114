import { spawn } from 'node:child_process';
import {
  chmodSync,
  existsSync,
  mkdtempSync,
  openSync,
  readdirSync,
  readFileSync,
  rmSync,
  writeFileSync,
} from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, test, vi } from 'vitest';
import { assemble } from '../../src/core/assemble.ts';
import { isKind } from '../../src/core/keys.ts';
import { round6 } from '../../src/core/quantity.ts';
import { score } from '../../src/core/score.ts';
import { shownCall } from '../../src/core/verdict.ts';
import type { OptionsFile } from '../../src/cli/options.ts';
import type { AppraisalFile, PlanFile, ScoredFile } from '../../src/cli/score.ts';
import { readWalkFile } from '../../src/files/walk-file.ts';
import { shelfOf } from '../../src/files/shelf.ts';
import { builtIn } from '../../src/reference/built-in.ts';
import { fileOf, lug, machine, machineKey } from '../files/samples.ts';
import { bundleCommand, bundlePath, sagline } from './command.ts';

// Every case starts a process or two, on a machine that may have other things to do.
vi.setConfig({ testTimeout: 60_000, hookTimeout: 60_000 });

interface AppraisalNumbers {
  readonly currency: string;
  readonly deduct: { readonly minor: number };
  readonly value: { readonly lowMinor: number; readonly middleMinor: number };
  readonly spend: { readonly hours: number };
  readonly meter: { readonly says: string };
}

const folder = mkdtempSync(join(tmpdir(), 'sagline-cli-'));
const root = new URL('../../', import.meta.url);
const example = new URL('src/files/example.json', root);
const checks = new URL('tests/checks/walks/', root);
const walks = readdirSync(checks)
  .filter((name) => name.endsWith('.json') && name !== 'expected.json')
  .map((name) => new URL(name, checks));

beforeAll(() => bundleCommand());
afterAll(() => {
  rmSync(folder, { recursive: true });
  rmSync(bundlePath);
});

function written(name: string, content: string | Uint8Array): string {
  const path = join(folder, name);
  writeFileSync(path, content);
  return path;
}

const scoredOf = (out: string): ScoredFile => JSON.parse(out) as ScoredFile;

const walk = {
  key: 'walk/w1',
  value: {
    v: 1,
    machine: machineKey,
    purpose: 'jobsite',
    depth: 'short',
    start: 'walk',
    corner: 'front-left',
  },
};

describe('what it prints', () => {
  test('[X1] demo prints a walk file, which score takes from a file and from a pipe alike', async () => {
    const demo = await sagline(['demo']);
    expect(demo).toMatchObject({ code: 0, err: '' });
    const read = readWalkFile(demo.out);
    expect(read.ok && read.value.unstamped.length).toBeGreaterThan(60);
    expect(demo.out).not.toContain('demo/');
    const [byFile, byPipe] = await Promise.all([
      sagline(['score', written('demo.json', demo.out)]),
      sagline(['score', '-'], demo.out),
    ]);
    expect(byFile).toMatchObject({ code: 0, err: '' });
    expect(byPipe).toEqual(byFile);
    const { format, version, walks: scored } = scoredOf(byFile.out);
    expect([format, version]).toEqual(['sagline-scored', 1]);
    const names = ['mini-first', 'mini-last', 'mini-second', 'steel-first', 'steel-last', 'steel-second'];
    expect(scored.map((each) => each.walk)).toEqual(names.map((each) => `walk/demo-${each}`));
    expect(scored.flatMap(({ notUsed }) => notUsed)).toEqual([]);
  });

  test('[X4] score tells the hours left of each machine at its last walk, from all its walks', async () => {
    const { out } = await sagline(['demo']);
    const { hours } = scoredOf((await sagline(['score', '-'], out)).out);
    expect(hours.map(({ walk }) => walk)).toEqual(['walk/demo-mini-last', 'walk/demo-steel-last']);
    const [small] = hours;
    expect(small).toMatchObject({
      clock: 'engine',
      meterHours: 1110,
      hoursPerWeek: 10.94,
      horizonHours: 10_000,
    });
    for (const { left, readings, open, life } of hours.flatMap(({ parts }) => parts)) {
      expect([open, readings.length]).toEqual([[], 3]);
      expect(left?.lowHours).toBeLessThan(left?.middleHours ?? 0);
      expect(left?.middleHours).toBeLessThan(left?.highHours ?? 0);
      expect(life?.source.text).not.toBe('');
    }
  });

  test('[X5] plan prints the job plan of each machine as JSON, from a file and from a pipe alike', async () => {
    const { out } = await sagline(['demo']);
    const [byFile, byPipe] = await Promise.all([
      sagline(['plan', written('plan.json', out)]),
      sagline(['plan', '-'], out),
    ]);
    expect(byFile).toMatchObject({ code: 0, err: '' });
    expect(byPipe).toEqual(byFile);
    const { format, version, machines } = JSON.parse(byFile.out) as PlanFile;
    expect([format, version]).toEqual(['sagline-plan', 1]);
    expect(machines.map(({ name }) => name)).toEqual([
      'Demo mini excavator, rubber',
      'Demo excavator, steel',
    ]);
    for (const { currency, visits, costs, open } of machines) {
      expect([currency, open]).toEqual(['EUR', []]);
      expect(visits.length).toBeGreaterThan(0);
      expect(costs?.costMinor).toBeLessThanOrEqual(costs?.everythingNowMinor ?? 0);
      expect(costs?.costMinor).toBeLessThanOrEqual(costs?.eachWhenDueMinor ?? 0);
      for (const { jobs, outlayMinor, setUpMinor } of visits) {
        const alone = jobs.reduce(
          (sum, each) => sum + each.partsMinor + each.labourMinor + each.downtimeMinor,
          0,
        );
        expect(outlayMinor).toBe(alone + setUpMinor);
      }
    }
  });

  test('[AP30] appraise prints what each undercarriage is worth, by the choices that its walk keeps', async () => {
    const { out } = await sagline(['demo']);
    const file = JSON.parse(out) as { records: { key: string; value: Record<string, unknown> }[] };
    const more = { saleable: 60, hours: 500 };
    const records = file.records.map(({ key, value }) =>
      key.startsWith('walk/') ? { key, value: { ...value, appraisal: more } } : { key, value },
    );
    const [asItIs, chosen] = await Promise.all([
      sagline(['appraise', '-'], out),
      sagline(['appraise', written('appraise.json', JSON.stringify({ ...file, records }))]),
    ]);
    const of = ({ code, err, out: text }: typeof asItIs) => {
      expect({ code, err }).toEqual({ code: 0, err: '' });
      const { format, version, machines } = JSON.parse(text) as AppraisalFile;
      expect([format, version, machines.length]).toEqual(['sagline-appraisal', 1, 2]);
      return machines.map(({ appraisal }) => appraisal as unknown as AppraisalNumbers);
    };
    const [before, after] = [of(asItIs)[0], of(chosen)[0]];
    expect([before?.currency, before?.deduct.minor, before?.spend.hours]).toEqual(['EUR', 0, 1000]);
    expect([after?.deduct.minor, after?.spend.hours]).toEqual([242_000, 500]);
    expect(after?.value.middleMinor).toBeNull();
    expect(before?.value.lowMinor).toBeLessThan(before?.value.middleMinor ?? 0);
    expect(before?.meter.says).toBe('plausible');
  });

  test('[X6] a machine without hours, or without prices that fit, has an open plan and no made-up figure', async () => {
    const file = JSON.parse((await sagline(['demo'])).out) as { records: { key: string; value: object }[] };
    const records = file.records.map(({ key, value }) =>
      key.startsWith('walk/')
        ? { key, value: { ...value, meterHours: undefined } }
        : { key, value: { ...value, ...(key.startsWith('machine/') && { prices: 'price/gone' }) } },
    );
    const text = JSON.stringify({ ...file, records });
    const [scored, planned] = await Promise.all([
      sagline(['score', '-'], text),
      sagline(['plan', '-'], text),
    ]);
    const { hours } = scoredOf(scored.out);
    expect(hours.flatMap(({ parts }) => parts.map(({ left, open }) => [left, open[0]]))).toEqual(
      hours.flatMap(({ parts }) => parts.map(() => [null, 'no-hours'])),
    );
    const { machines } = JSON.parse(planned.out) as PlanFile;
    for (const { currency, visits, costs, open } of machines) {
      expect([currency, visits, costs]).toEqual([null, [], null]);
      for (const { why } of open) expect(why.kind).toBe('not-here');
    }
    expect(planned.out).not.toContain('NaN');
  });

  test('[X1] the demo is the same every time', async () => {
    const [one, other] = await Promise.all([sagline(['demo']), sagline(['demo'])]);
    expect(one.out).toBe(other.out);
  });

  test('[X2] schema prints the JSON Schema of the walk file', async () => {
    const schema = await sagline(['schema']);
    expect(schema).toMatchObject({ code: 0, err: '' });
    expect(JSON.parse(schema.out)).toMatchObject({
      $schema: 'https://json-schema.org/draft/2020-12/schema',
      properties: { format: { const: 'sagline-walk' } },
    });
  });

  test.each([['--help'], ['-h'], ['help']])('[X3] %s tells all commands', async (flag) => {
    const help = await sagline([flag]);
    expect(help).toMatchObject({ code: 0, err: '' });
    for (const command of [
      'sagline demo',
      'sagline score FILE',
      'sagline plan FILE',
      'sagline options FILE',
      'sagline appraise FILE',
      'sagline schema',
      '--version',
    ]) {
      expect(help.out).toContain(command);
    }
  });

  test('[X3] --version tells the version of the package', async () => {
    const { version } = JSON.parse(readFileSync(new URL('package.json', root), 'utf8')) as {
      version: string;
    };
    expect(await sagline(['--version'])).toEqual({ code: 0, out: `sagline ${version}\n`, err: '' });
  });
});

describe('the same result as the core', () => {
  test('[X4] there are three walks of published values at least', () => {
    expect(walks.length).toBeGreaterThanOrEqual(3);
  });

  test.each([example, ...walks].map((url) => [url.pathname.split('/').at(-1) ?? '', url] as const))(
    '[X4] %s',
    async (_, url) => {
      const bytes = readFileSync(url);
      const content = readWalkFile(bytes);
      if (!content.ok) throw new Error(JSON.stringify(content.error));
      const shelf = shelfOf(content.value);
      const ended = await sagline(['score', url.pathname]);
      expect(ended).toMatchObject({ code: 0, err: '' });
      const { walks: printed } = scoredOf(ended.out);
      expect(printed.map((each) => each.walk)).toEqual(shelf.keys.filter((key) => isKind(key, 'walk')));
      for (const each of printed) {
        const assembled = assemble(shelf, builtIn, each.walk);
        if (!assembled.ok) throw new Error(assembled.error.kind);
        const scored = score(assembled.value.input);
        expect(each.verdict).toMatchObject({
          call: shownCall(scored.verdict),
          atLeast: scored.verdict.atLeast,
          meanwhile: scored.verdict.meanwhile,
          settled: scored.verdict.settled,
        });
        expect(
          each.items.map(({ place, item, atLeast, meanwhile, worn, reasons, open }) => [
            place,
            item,
            atLeast,
            meanwhile,
            worn && [worn.percent, worn.plusMinus],
            reasons.map(({ rule }) => rule),
            open.map(({ kind }) => kind),
          ]),
        ).toEqual(
          scored.outcomes.map(({ state, atLeast, meanwhile, reasons, open }) => [
            state.place,
            state.item.id,
            atLeast,
            meanwhile,
            state.wear ? [round6(state.wear.percent), round6(state.wear.expanded)] : null,
            reasons.map(({ rule }) => rule),
            open.map(({ kind }) => kind),
          ]),
        );
      }
    },
  );
});

describe('the choice of tracks', () => {
  const optionsIn = (out: string): OptionsFile => JSON.parse(out) as OptionsFile;

  test('[X10] options compares plain rubber and steel for machines that name none, by their own walks', async () => {
    const { out } = await sagline(['demo']);
    const [byFile, byPipe] = await Promise.all([
      sagline(['options', written('options.json', out)]),
      sagline(['options', '-'], out),
    ]);
    expect(byFile).toMatchObject({ code: 0, err: '' });
    expect(byPipe).toEqual(byFile);
    const { format, version, machines } = optionsIn(byFile.out);
    expect([format, version]).toEqual(['sagline-options', 1]);
    expect(machines.map(({ name }) => name)).toEqual([
      'Demo mini excavator, rubber',
      'Demo excavator, steel',
    ]);
    for (const { options, ranked, choice, startingFrom } of machines) {
      expect(options.map(({ id }) => id).sort()).toEqual(['plain-rubber', 'plain-steel', 'plain-steel-pads']);
      expect(options.slice(0, ranked.length).map(({ id }) => id)).toEqual(ranked);
      expect(options[0]?.figures).toMatchObject({ currency: 'EUR', lifeFrom: 'walks' });
      expect(choice.kind).not.toBe('default');
      expect(startingFrom.steelLife.source.text).toContain('common practice, no source');
    }
  });

  test('[X11] a machine alone, its options and what it is for are enough: no walk is asked for', async () => {
    const option = (fields: object) => ({ v: 1, name: 'made up', ...fields });
    const price = (minor: number) => ({ minor, currency: 'EUR' });
    const records = [
      {
        key: machineKey,
        value: { ...machine, use: { ground: { rock: 100 }, noMarks: true, noTracksYet: true } },
      },
      { key: 'option/a', value: option({ track: 'rubber-cored', price: price(90_000) }) },
      {
        key: 'option/b',
        value: option({ track: 'rubber-cored', price: price(150_000), machine: machineKey }),
      },
      { key: 'option/c', value: option({ track: 'steel', price: price(150_000) }) },
      { key: 'option/d', value: option({ track: 'rubber-cored', machine: 'machine/other' }) },
    ];
    const { code, out } = await sagline(['options', '-'], fileOf(records));
    expect(code).toBe(0);
    const [only] = optionsIn(out).machines;
    expect(only).toMatchObject({ machine: machineKey, current: null, ranked: ['option/a', 'option/b'] });
    expect(only?.choice).toEqual({ kind: 'first', id: 'option/a', runnerUp: 'option/b' });
    expect(only?.options.map(({ id, fits }) => [id, fits])).toEqual([
      ['option/a', true],
      ['option/b', true],
      ['option/c', false],
    ]);
    expect(out).not.toMatch(/NaN|Infinity/);
  });

  test('[X11] a file without a machine has one sentence', async () => {
    const { code, out, err } = await sagline(['options', '-'], fileOf([walk]));
    expect({ code, out }).toEqual({ code: 2, out: '' });
    expect(err).toBe('sagline: The file holds no machine to choose tracks for.\n');
  });
});

describe('bad input has one sentence and exit code 2', () => {
  const good = [{ key: machineKey, value: machine }, walk];

  test.each<[string, readonly string[], string]>([
    ['no command', [], 'Say what to do'],
    ['an unknown command', ['judge'], '“judge”'],
    ['a command that would steer a terminal', ['\u001b[31mred'], '“\ufffd[31mred”'],
    ['no file', ['score'], 'Name the walk file'],
    ['a file that is not there', ['score', '/no/such/file'], 'There is no such file'],
    ['a path through a file', ['score', `${example.pathname}/a`], 'There is no such file'],
    ['a folder', ['score', folder], 'folder'],
    ['an argument too many', ['demo', 'now'], '“now”'],
    ['a file too many', ['score', example.pathname, 'other.json'], '“other.json”'],
    ['a device without end', ['score', '/dev/zero'], 'larger than 25 MB'],
  ])('[X5] %s', async (_, args, part) => {
    const { code, out, err } = await sagline(args);
    expect({ code, out }).toEqual({ code: 2, out: '' });
    expect(err).toMatch(/^sagline: [^\n]+\.\n$/);
    expect(err).toContain(part);
  });

  test.each<[string, string | Uint8Array, string]>([
    ['nothing', '', 'empty'],
    ['a picture', Uint8Array.from([0xff, 0xd8, 0xff, 0xe0]), 'no readable text'],
    ['a page', '<html>', 'not JSON: line 1, column 1'],
    ['half a file', fileOf(good).slice(0, -9), 'breaks off'],
    ['another format', '{"format":"other"}', 'not a walk file'],
    ['a later version', fileOf(good, { version: 2 }), 'newer version'],
    ['lists in lists', '['.repeat(100_000), 'nested deeper'],
    ['50 MB', ' '.repeat(50_000_000), 'larger than 25 MB'],
    ['a bad record', fileOf([...good, { key: 'machine/b', value: { v: 1 } }]), '“machine/b”'],
    [
      'a key that would steer a terminal',
      fileOf([{ key: '\u001b[2J\u202e', value: {} }]),
      '“\ufffd[2J\ufffd”',
    ],
    ['no walk', fileOf([{ key: machineKey, value: machine }]), 'no walk to score'],
    [
      'a removed walk alone',
      fileOf([{ key: 'walk/w1', stamp: `${'0'.repeat(11)}1-${'a'.repeat(16)}` }]),
      'no walk to score',
    ],
    ['a walk without its machine', fileOf([walk]), '“machine/digger”, which is not in the file'],
    [
      'a walk of something that is no machine',
      fileOf([{ ...walk, value: { ...walk.value, machine: 'walk/w1' } }]),
      '“walk/w1”, which is not in the file',
    ],
    ['a walk of a later version', fileOf([{ key: 'walk/w1', value: { v: 2 } }]), 'newer version'],
  ])('[X5] by file and by pipe: %s', async (_, content, part) => {
    const path = written('bad.json', content);
    const [byFile, byPipe] = await Promise.all([sagline(['score', path]), sagline(['score', '-'], content)]);
    for (const { code, out, err } of [byFile, byPipe]) {
      expect({ code, out }).toEqual({ code: 2, out: '' });
      expect(err).toMatch(/^sagline: [^\n]+\.\n$/);
      expect(err).toContain(part);
      expect(err).not.toMatch(/\n {4}at |Error|undefined/);
    }
    expect(byFile.err).toContain('bad.json”: ');
  });

  test.skipIf(process.getuid?.() === 0 || process.platform === 'win32')(
    '[X5] a file that may not be read',
    async () => {
      const path = written('secret.json', fileOf(good));
      chmodSync(path, 0);
      expect(await sagline(['score', path])).toMatchObject({
        code: 2,
        err: expect.stringContaining('not allowed') as string,
      });
    },
  );
});

describe('what is odd but no error', () => {
  const scoredWith = async (...records: object[]) => {
    const { code, out, err } = await sagline(
      ['score', '-'],
      fileOf([{ key: machineKey, value: machine }, walk, ...records]),
    );
    expect({ code, err }).toEqual({ code: 0, err: '' });
    const [first] = scoredOf(out).walks;
    if (!first) throw new Error('no walk');
    return first;
  };

  test('[X6] nothing read is open, and never run', async () => {
    const { verdict, items, rules, sheets } = await scoredWith();
    expect(verdict).toMatchObject({ call: 'open', atLeast: 'run', settled: false, drivers: [], flips: [] });
    expect(verdict.open.length).toBe(items.length);
    expect(items.every(({ call, known, reading }) => call === 'open' && !known && reading === null)).toBe(
      true,
    );
    expect([rules, sheets.left, sheets.right]).toEqual([null, null, null]);
  });

  test('[X6] readings of what the machine does not have are named', async () => {
    const { notUsed } = await scoredWith(
      {
        key: 'reading/w1/left.bottom-roller.9/roller-leak/1',
        value: { v: 1, what: { kind: 'finding', finding: 'dry' } },
      },
      { key: 'reading/w1/left.track/hoverboard/2', value: lug },
      { key: 'reading/w1/left.track/lug-depth/1', value: lug },
      {
        key: 'reading/w1/left.track/pass-tread/1',
        value: { v: 1, what: { kind: 'pass', items: [], except: [], seen: 'whole' } },
      },
      {
        key: 'reading/w1/left.bottom-roller/roller-leak/1',
        value: { v: 1, what: { kind: 'unseen', why: 'mud' } },
      },
    );
    expect(notUsed).toMatchObject([
      { place: 'left.bottom-roller.9', item: 'roller-leak', n: 1 },
      { place: 'left.track', item: 'hoverboard', n: 2 },
    ]);
    expect(notUsed[0]?.sentence).toMatch(/^Not used: .*left\.bottom-roller\.9\.$/);
  });

  test('[X6] names that every object has are no sheet, set or tool', async () => {
    const odd = { ...machine, sheet: 'constructor', rules: 'toString', left: { sheet: '__proto__' } };
    const { sheets, rules, items } = await scoredWith(
      { key: 'machine/odd', value: odd },
      { key: 'walk/w0', value: { ...walk.value, machine: 'machine/odd', rules: { key: 'machine/odd' } } },
      { key: 'reading/w0/left.track/lug-depth/1', value: { ...lug, tool: 'constructor' } },
    );
    expect([sheets.left, rules]).toEqual([null, null]);
    expect(items.find(({ item }) => item === 'lug-depth')?.reading).toMatchObject({ mm: 12 });
  });

  test('[X6] what a sheet and a set contradict themselves in stands beside their names', async () => {
    const source = { mark: 'entered', text: 'test' };
    const sheet = {
      v: 1,
      name: 'Odd sheet',
      items: [
        {
          item: 'lug-depth',
          unit: 'mm',
          new: { at: 5, source },
          limits: [{ at: 5, means: 'replace', hundred: true, source }],
        },
      ],
      sag: [],
      rules: 'rules/odd',
    };
    const set = { v: 1, language: 1, name: 'Odd set', covers: {}, rules: [] };
    const { sheets, rules } = await scoredWith(
      { key: 'machine/digger2', value: machine },
      { key: 'limits/odd', value: sheet },
      { key: 'rules/odd', value: set },
      { key: 'walk/w0', value: { ...walk.value, sheet: { key: 'limits/odd' } } },
    );
    expect(sheets.left).toMatchObject({ key: 'limits/odd', name: 'Odd sheet' });
    expect(sheets.left?.problems).toEqual([
      'lug depth: new and limit are the same, 5 mm; worn cannot be counted.',
    ]);
    expect(rules).toMatchObject({
      key: 'rules/odd',
      problems: ['The set covers no item, so every item stays open.'],
    });
  });

  test('[X7] text of a stranger cannot steer the terminal', async () => {
    const name = 'Digger \u001b[31m \u009b31m \u2028';
    const { out } = await sagline(
      ['score', '-'],
      fileOf([{ key: machineKey, value: { ...machine, name } }, walk]),
    );
    expect(out).toContain('\\u001b[31m \\u009b31m \\u2028');
    expect(scoredOf(out).walks[0]?.machine.name).toBe(name);
  });

  test('[X7] who has read enough may close the pipe', async () => {
    const child = spawn(process.execPath, [bundlePath, 'demo']);
    child.stdout.destroy();
    let err = '';
    child.stderr.on('data', (chunk: Buffer) => (err += chunk.toString()));
    const code = await new Promise((resolve) => child.on('close', resolve));
    expect({ code, err }).toEqual({ code: 0, err: '' });
  });

  test.skipIf(!existsSync('/dev/full'))('[X7] a full disk is said, and is no success', async () => {
    const child = spawn(process.execPath, [bundlePath, 'demo'], {
      stdio: ['ignore', openSync('/dev/full', 'w'), 'pipe'],
    });
    let err = '';
    child.stderr?.on('data', (chunk: Buffer) => (err += chunk.toString()));
    const code = await new Promise((resolve) => child.on('close', resolve));
    expect({ code, err }).toEqual({ code: 1, err: 'sagline: The result could not be written.\n' });
  });
});
