import { describe, expect, test } from 'vitest';
import type { Params } from '../../src/core/reason.ts';
import { startingRules } from '../../src/reference/rules-starting.ts';
import { reasonMessages } from '../../src/words/en/reason-messages.ts';
import { reasonTexts } from '../../src/words/en/reason-texts.ts';
import { knowsMessage, reasonSentence } from '../../src/words/en/reasons.ts';
import { makeFormatter } from '../../src/words/formatter.ts';

const format = makeFormatter({ locale: 'en-GB', depth: 'mm', length: 'mm', mass: 'kg' });
const messages = [...new Set(startingRules.rules.map(({ reason }) => reason.message))];

const full: Params = {
  item: 'sag',
  side: 'left',
  component: 'track',
  percent: 104.2,
  expanded: 6,
  mm: 4.8,
  limitMm: 5,
  newMm: 22,
  byMm: 7,
  lowMm: 10,
  highMm: 15,
  count: 7,
  share: 0.6,
  lengthMm: 35,
  depthMm: 9,
};

const sentenceOf = (message: string, params: Params, by = format): string =>
  knowsMessage(message) ? reasonSentence({ rule: message, message, params }, by) : '';

describe('[N4] the sentence of a reason', () => {
  test.each(messages)('[R12] %s has one, with its figures and without them', (message) => {
    for (const params of [full, {}]) {
      const sentence = sentenceOf(message, params);
      expect(sentence).toMatch(/^[\p{Lu}\d][^]*[.]$/u);
      expect(sentence).not.toMatch(/undefined|NaN|null|\[object/);
    }
  });

  test('[R13] no message waits for a rule that is not there', () => {
    const known = [...Object.keys(reasonTexts), ...Object.keys(reasonMessages)];
    const spare = known.filter((id) => id !== 'written' && !messages.includes(id));
    expect(new Set(known).size).toBe(known.length);
    expect(spare).toEqual([]);
  });

  const adjusting = startingRules.rules.filter(({ call }) => call === 'adjust');
  test.each(adjusting.map(({ reason }) => reason.message))('[R14] %s says tighten or ease', (message) => {
    expect(sentenceOf(message, full)).toMatch(/\b[Tt]ighten\b|\b[Ee]ase\b/);
  });

  const easing = adjusting.map(({ reason }) => reason.message).filter((message) => message.endsWith('tight'));
  test.each(easing)('[CV-79] %s says no more than one turn unless the manual allows more', (message) => {
    // Six makers print one turn, one prints 1.5 (trade figures 8.1): one for every model, more only by its manual.
    expect(sentenceOf(message, full)).toContain(
      'no more than one turn unless this machine’s manual allows more',
    );
  });

  test('[R15] grease rules are not shown for a spring tensioner', () => {
    expect(sentenceOf('sag.tight', { ...full, tensioner: 'spring' })).not.toMatch(/valve|grease|nipple/);
  });

  test('[R16] what a person wrote is said as written', () => {
    const text = 'as the maker says';
    expect(sentenceOf('written', { ...full, text })).toBe(text);
    expect(sentenceOf('wear.limit', { ...full, text })).toBe(text);
  });

  test('[R17] a reason names what was read and its limit', () => {
    expect(sentenceOf('wear.limit', full)).toContain('4.8');
    expect(sentenceOf('wear.limit', full)).toContain('5');
    expect(sentenceOf('wear.limit', full)).toContain('104');
  });

  const inInches = makeFormatter({ locale: 'en-US', depth: 'in/32', length: 'in', mass: 'lb' });
  test.each([
    ['sag', 'sag.loose', '0.276'],
    ['pitch', 'wear.limit', '0.189'],
    ['bushing-od', 'wear.limit', '0.189'],
    ['link-height', 'wear.watch', '0.189'],
    ['lug-depth', 'wear.limit', '/32'],
  ])('[R18] a size of %s is said in the unit it is read in', (item, message, size) => {
    const sentence = sentenceOf(message, { ...full, item }, inInches);
    expect(sentence).toContain(size);
    expect(sentence.includes('/32')).toBe(item === 'lug-depth');
  });

  test.each(['constructor', '__proto__', 'of-tomorrow'])('[R19] %s is no message of ours', (message) => {
    expect(knowsMessage(message)).toBe(false);
    expect(reasonSentence({ rule: 'a', message, params: {} }, format)).toBe(message);
  });
});
