import { expect, type Locator, type Page } from '@playwright/test';
import type { Cleanliness, SagMethod } from '../../src/core/limits.ts';
import { cautionTick } from '../../src/words/en/cautions.ts';
import { depthWords, machineKindWords, purposeWords, trackKindWords } from '../../src/words/en/choices.ts';
import { common } from '../../src/words/en/common.ts';
import { home } from '../../src/words/en/home.ts';
import { findingLabel, itemName } from '../../src/words/en/items.ts';
import { machine, machineForm } from '../../src/words/en/machine.ts';
import { pad } from '../../src/words/en/pad.ts';
import { cleanlinessWords, sagAsk, sagMethodWords } from '../../src/words/en/sag.ts';
import { verdict } from '../../src/words/en/verdict.ts';
import { beforeStart, step as stepWords, walk } from '../../src/words/en/walk.ts';
import type { MachineKind, TrackKind } from '../../src/core/machine.ts';
import type { Depth, Purpose } from '../../src/core/walk.ts';

/** One thing found at a look: on the whole row, or at one part of it. */
export interface Finding {
  readonly item: string;
  readonly part?: number;
  /** The finding's id; for a crack its length and depth as typed. */
  readonly is: string | readonly [length: string, depth: string];
  readonly count?: number;
  readonly share?: string;
}

/** What the person does at one step; a look without an answer is passed. */
export type Answer =
  | { readonly type: readonly string[]; readonly links?: number }
  | { readonly sag: readonly string[]; readonly by?: SagMethod; readonly clean?: Cleanliness }
  | { readonly eye: string }
  | { readonly found: readonly Finding[] };

export type Plan = Readonly<Record<string, Answer>>;

/** Gloves bounce, so the app takes a second tap at the same place within this time for the first one's echo. */
const echoMs = 450;

const keyNames: Readonly<Record<string, string>> = { '.': pad.point, '/': pad.slash, ' ': pad.space };

/** Walks a machine like a person: by what can be seen, one tap at a time, counting them. */
export class Walker {
  /** Everything tapped but the digits: buttons, choices, fields. */
  taps = 0;
  /** Digits, points and strokes typed on the pad. */
  digits = 0;
  /** Readings made: one for each Next, each pass of a group, each finding. */
  readings = 0;
  readonly page: Page;
  #lastTap = { at: 0, x: 0, y: 0, on: '' };

  constructor(page: Page) {
    this.page = page;
  }

  /** One tap, in the middle of what is shown, or beside it where the finger has just been. */
  async tap(target: Locator): Promise<void> {
    this.taps += 1;
    await this.#touch(target);
  }

  async #touch(target: Locator): Promise<void> {
    let gone = false;
    // While one screen gives way to the next, what was measured may not be what stands there now: look again.
    await expect(async () => {
      gone = this.page.isClosed();
      if (!gone) await this.#touchOnce(target);
    }).toPass({ timeout: 20_000 });
    // A browser that was killed comes to nothing more, however long one looks.
    if (gone) throw new Error('the page is closed');
  }

  async #touchOnce(target: Locator): Promise<void> {
    await target.waitFor();
    const [box] = await target.evaluateAll((found) =>
      found.map((each) => {
        // Clear of the bar at the bottom, so that the click itself need not scroll.
        each.scrollIntoView({ block: 'center' });
        const { x, y, width, height } = each.getBoundingClientRect();
        return { x, y, width, height };
      }),
    );
    if (box === undefined) throw new Error('nothing to tap there');
    const spots = [0.5, 0.15, 0.85].map((share) => ({ x: box.width * share, y: box.height / 2 }));
    const last = this.#lastTap;
    const on = `${this.page.url()} ${String(target)}`;
    const isFresh = ({ x, y }: { x: number; y: number }): boolean =>
      on !== last.on && Math.hypot(box.x + x - last.x, box.y + y - last.y) > 40;
    const position = spots.find(isFresh) ?? { x: box.width / 2, y: box.height / 2 };
    const wait = isFresh(position) ? 0 : last.at + echoMs - Date.now();
    if (wait > 0) await this.page.waitForTimeout(wait);
    await target.click({ position, timeout: 2000 });
    this.#lastTap = { at: Date.now(), x: box.x + position.x, y: box.y + position.y, on };
  }

  button(name: string): Locator {
    return this.page.getByRole('button', { name, exact: true });
  }

  link(name: string): Locator {
    return this.page.getByRole('link', { name, exact: true });
  }

  choice(name: string): Locator {
    return this.page.getByRole('radio', { name });
  }

  /** A kind of track, by its label and the line under it: `steel` alone would be several. */
  trackKind(track: TrackKind): Locator {
    const { label, line = '' } = trackKindWords[track];
    return this.page.getByRole('radio', { name: `${label} ${line}`, exact: true });
  }

  /** The action at the bottom that leads on. */
  get main(): Locator {
    return this.page.getByRole('navigation').getByRole('button').last();
  }

  /** The step that the address names, as the walk's own id; `verdict` at the end. */
  get step(): string {
    const { pathname } = new URL(this.page.url());
    return pathname
      .replace(/^\/walk\/(demo\/)?[^/]+\/?/, '')
      .split('/')
      .join('.');
  }

  /** Types on the pad's own keys. */
  async type(text: string): Promise<void> {
    for (const each of text) {
      const name = keyNames[each] ?? each;
      await this.button(name).click();
      this.digits += 1;
    }
  }

  /** From the first screen to a new machine's own. */
  async addMachine(name: string, kind: MachineKind, track: TrackKind, mass?: string): Promise<void> {
    const { page } = this;
    await this.tap(this.link(home.addMachine));
    await page.getByLabel(machineForm.name).fill(name);
    await this.tap(this.choice(machineKindWords[kind]));
    await this.tap(this.trackKind(track));
    if (mass !== undefined) await page.getByLabel(machineForm.mass).fill(mass);
    await this.tap(this.button(machineForm.save));
    await expect(page.getByRole('heading', { level: 1 })).toHaveText(name);
  }

  /** From the machine's screen to the walk's first question. */
  async startWalk(depth: Depth, purpose: Purpose = 'jobsite'): Promise<void> {
    await this.tap(this.link(machine.startWalk));
    if (purpose !== 'jobsite') await this.tap(this.choice(purposeWords[purpose].label));
    if (depth === 'full') await this.tap(this.choice(depthWords.full.label));
    await this.tap(this.button(beforeStart.go));
    await this.page.waitForURL(/\/walk\/[^/]+\/[^/]+/);
  }

  /** Answers step after step until the verdict, or until `until` is reached. */
  async walk(plan: Plan, each?: (step: string) => Promise<void>): Promise<void> {
    for (let count = 0; count < 200 && this.step !== 'verdict'; count += 1) {
      await each?.(this.step);
      if (this.step === 'verdict') return;
      await this.answer(plan[this.step]);
    }
    await expect(this.page.getByRole('heading', { level: 1 })).toHaveText(verdict.title);
  }

  /** Ticks the cautions that stand before a step, if any do. */
  async pastCautions(): Promise<void> {
    const ticks = this.button(cautionTick);
    await this.settled();
    const count = await ticks.count();
    if (count === 0) return;
    for (let at = 0; at < count; at += 1) await this.tap(ticks.nth(at));
    await this.tap(this.button(stepWords.cautionGo));
    await expect(ticks).toHaveCount(0);
    await this.settled();
  }

  /** Waits until the screen of the address stands. */
  async settled(): Promise<void> {
    await expect(this.page.getByRole('heading', { level: 1 })).not.toHaveText(common.loading);
  }

  async answer(answer: Answer | undefined): Promise<void> {
    await this.pastCautions();
    if (answer === undefined) return this.#pass();
    if ('found' in answer) {
      for (const finding of answer.found) await this.find(finding);
      return this.#pass();
    }
    if ('eye' in answer) return this.#sagByEye(answer.eye);
    await ('sag' in answer ? this.#sag(answer) : this.#size(answer));
    await this.next();
  }

  async #size({ type: [first = '', second], links }: Extract<Answer, { type: unknown }>): Promise<void> {
    await this.type(first);
    if (links !== undefined) await this.setLinks(links);
    if (second === undefined) return;
    await this.tap(this.button(pad.next));
    await this.type(second);
  }

  async #sag({ sag: [first = '', second], by, clean }: Extract<Answer, { sag: unknown }>): Promise<void> {
    if (by !== undefined) await this.chooseMethod(sagMethodWords[by].name);
    await this.type(first);
    if (second !== undefined) {
      await this.tap(this.button(sagAsk.another));
      await this.type(second);
    }
    const wanted = clean && this.page.getByRole('radio', { name: cleanlinessWords[clean] });
    if (wanted && (await wanted.getAttribute('aria-checked')) === 'false') await this.tap(wanted);
  }

  /** Next on the pad: the reading is made and the walk goes on. */
  async next(): Promise<void> {
    await this.#onward(this.button(pad.next));
    this.readings += 1;
  }

  async setLinks(wanted: number): Promise<void> {
    const row = this.page.getByRole('group', { name: pad.links });
    for (let count = 0; count < 12; count += 1) {
      const now = Number(await row.getByRole('status').textContent());
      if (now === wanted) return;
      await this.tap(row.getByRole('button', { name: now < wanted ? stepWords.more : stepWords.fewer }));
    }
  }

  /** How sag is measured, unless it is measured so already. */
  async chooseMethod(name: string): Promise<void> {
    const now = this.page.getByRole('button', { name: `${stepWords.method}: ` });
    if ((await now.textContent()) === `${stepWords.method}: ${name}`) return;
    await this.tap(now);
    const methods = this.page.getByRole('radiogroup', { name: sagAsk.method });
    await this.tap(methods.getByRole('radio', { name: new RegExp(`^${name}`) }));
  }

  async #sagByEye(finding: string): Promise<void> {
    const now = this.page.getByRole('button', { name: `${stepWords.method}: ` });
    if ((await now.textContent()) !== `${stepWords.method}: ${stepWords.byEye}`) {
      await this.tap(now);
      await this.tap(this.page.getByRole('radio').getByText(walk.byEyeInstead, { exact: true }));
    }
    const looks = this.page.getByRole('radiogroup', { name: stepWords.byEyeTitle });
    await this.#onward(looks.getByText(findingLabel('sag-by-eye', finding), { exact: true }));
    this.readings += 1;
  }

  async #pass(): Promise<void> {
    await this.#onward(this.main);
    this.readings += 1;
  }

  async #onward(target: Locator): Promise<void> {
    const before = this.step;
    await this.tap(target);
    await expect.poll(() => this.step, { message: `still at ${before}` }).not.toBe(before);
    await this.settled();
  }

  /** One finding on its panel, saved. */
  async find({ item, part, is, count, share }: Finding): Promise<void> {
    if (part !== undefined) await this.tap(this.button(stepWords.part(part)));
    await this.tap(
      this.page
        .locator('main li')
        .getByRole('button')
        .filter({ has: this.page.getByText(itemName(item), { exact: true }) }),
    );
    if (typeof is !== 'string') {
      await this.type(is[0]);
      await this.tap(this.button(common.save));
      await this.type(is[1]);
      await this.tap(this.button(common.save));
    } else {
      await this.tap(this.page.getByRole('radio').getByText(findingLabel(item, is), { exact: true }));
      for (let more = 1; more < (count ?? 1); more += 1) await this.tap(this.button(stepWords.more));
      if (share !== undefined) await this.tap(this.choice(share));
      await this.tap(this.button(common.save));
    }
    await expect(this.page.getByRole('heading', { level: 1 })).not.toHaveText(itemName(item));
    this.readings += 1;
  }
}
