import { expect, test } from 'vitest';
import { emptyForm, signersOf, type SealFault, type SealForm } from '../../../src/app/sealing/seal-form.ts';

const drawn = [[0, 0, 0.5, 0.2]];
const form: SealForm = {
  ...emptyForm(' Kim Osei '),
  inspector: { name: ' Kim Osei ', way: 'drawn', strokes: drawn },
};
const inspector = { role: 'inspector', name: 'Kim Osei', way: 'drawn', strokes: drawn };
const renter = (answer: SealForm['answer'], rest: Partial<SealForm> = {}): SealForm => ({
  ...form,
  role: 'renter',
  answer,
  ...rest,
});
const named = { name: 'Ada Brand', way: 'drawn', strokes: [] } as const;

const missing: readonly (readonly [string, SealForm, readonly SealFault[]])[] = [
  ['nothing at all', emptyForm(''), ['inspector-name', 'inspector-sign']],
  ['a name of spaces', { ...form, inspector: { ...form.inspector, name: '  ' } }, ['inspector-name']],
  ['no answer', renter(''), ['answer']],
  ['nobody named who agrees', renter('agrees'), ['other-name', 'other-sign']],
  ['no signature of one who agrees', renter('agrees', { other: named }), ['other-sign']],
  ['no objection', renter('objects', { other: named }), ['objection']],
];

test.each(missing)('[SG4] is not sealed with %s', (_name, each, faults) => {
  expect(signersOf(each)).toEqual({ ok: false, error: faults });
});

const whole: readonly (readonly [string, SealForm, readonly object[]])[] = [
  ['the inspector alone', form, [inspector]],
  [
    'a typed name, which is a signature',
    { ...form, inspector: { name: 'Kim Osei', way: 'typed', strokes: drawn } },
    [{ role: 'inspector', name: 'Kim Osei', way: 'typed' }],
  ],
  [
    'a renter who agrees',
    renter('agrees', { other: { ...named, strokes: drawn } }),
    [inspector, { role: 'renter', name: 'Ada Brand', way: 'drawn', strokes: drawn }],
  ],
  [
    'a renter who objects without signing',
    renter('objects', { other: { ...named, way: 'typed' }, objection: ' the cut was there ' }),
    [inspector, { role: 'renter', name: 'Ada Brand', way: 'refused', objection: 'the cut was there' }],
  ],
  [
    'a renter who signs an objection',
    renter('objects', { other: { ...named, strokes: drawn }, objection: 'no' }),
    [inspector, { role: 'renter', name: 'Ada Brand', way: 'drawn', strokes: drawn, objection: 'no' }],
  ],
  [
    'a renter who would not sign and gave no name',
    renter('refuses', { objection: 'typed before' }),
    [inspector, { role: 'renter', name: '', way: 'refused' }],
  ],
];

test.each(whole)('[SG5] is sealed with %s', (_name, each, signers) => {
  expect(signersOf(each)).toEqual({ ok: true, value: signers });
});
