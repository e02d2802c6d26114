import jpeg from 'jpeg-js';
import type { Block, Report } from '../../src/report/blocks.ts';
import type { PdfPicture } from '../../src/report/pdf.ts';

const photoOf = (index: number): Block => ({
  kind: 'photo',
  sha256: String(index).repeat(64).slice(0, 64),
  alt: `Left track, place ${index}: the lugs from the side, with a steel rule beside them`,
  caption: `${index}. Left track, lug depth, close. Taken 3 June 2026, 09:1${index}.`,
});

/** Strokes as a hand leaves them on a pad. */
export const strokes: readonly (readonly number[])[] = [
  Array.from({ length: 80 }, (_, index) =>
    index % 2 === 0 ? 0.1 + index * 0.006 : 0.2 + 0.1 * Math.sin(index / 4),
  ),
  [0.2, 0.25, 0.5, 0.2],
  [0.6, 0.15],
];

const readings = [
  ['Track sag, left', '38 mm', '±2 mm', '25–45 mm', '62 %', 'run'],
  ['Lug depth, left, shortest', '14 mm', '±1 mm', '≤ 8 mm', '71 %', 'recheck'],
  ['Link height, right', '101.4 mm', '±0.3 mm', '97.5 mm', '84 %', 'replace'],
  ['Bushing outside diameter, right, across the track', '58.1 mm', '±0.1 mm', '57.0 mm', '112 %', 'replace'],
  ['Bottom roller 3, left: leak', 'wet, dripping', '', 'dry', '', 'repair'],
  ['Idler travel left', '−4 mm', '±1 mm', '0 mm', '', 'adjust'],
] as const;

/** A report of an invented machine, with a block of every kind. */
export const sampleReport: Report = {
  lang: 'en',
  title: 'Undercarriage of Żółty 2 – Γερανός «Кран»',
  running: 'Sagline report · Żółty 2 · walk of 3 June 2026',
  pageOf: (page, pages) => `Page ${page} of ${pages}`,
  blocks: [
    { kind: 'heading', level: 1, text: 'Undercarriage of Żółty 2 – Γερανός «Кран»' },
    {
      kind: 'text',
      role: 'lead',
      text: 'Walked on 3 June 2026 at 4 120 machine hours by Çağrı İnönü, on firm ground, track tension as found.',
    },
    {
      kind: 'call',
      call: 'replace',
      word: 'replace',
      text: 'The part is done: order it and plan the change. Meanwhile: light work, level, firm ground, no slopes, few turns; look at it every day.',
    },
    {
      kind: 'list',
      items: [
        'Bushing outside diameter, right: 112 % worn (108–116 %), past its limit of 57.0 mm.',
        'Link height, right: 84 % worn; 100 % is reached in 320 h (210–480 h).',
        'Bottom roller 3, left: leaks oil and turns.',
      ],
    },
    {
      kind: 'facts',
      rows: [
        ['Machine', 'Żółty 2, 5 t excavator, steel tracks'],
        ['Limits', 'Typical for 135 mm pitch, estimate, ½″ to ⅝″ lugs; 20 °C'],
        ['Method', 'Sag at mid span under a straight edge, weight on the ground'],
        ['Inspector', 'Çağrı İnönü'],
        ['Purpose', 'Hand back after rental'],
      ],
    },
    { kind: 'heading', level: 2, text: 'Readings' },
    { kind: 'heading', level: 3, text: 'What was measured, how and against what' },
    {
      kind: 'table',
      caption: 'Readings and findings, left and right',
      head: ['What', 'Reading', 'Uncertainty', 'Limit', 'Worn', 'Call'],
      figures: [1, 2, 3, 4],
      rows: Array.from({ length: 7 }, () => readings).flat(),
    },
    { kind: 'heading', level: 2, text: 'Wear as lengths' },
    { kind: 'bar', percent: 62, text: 'Track sag, left: 62 % (55–70 %)' },
    {
      kind: 'bar',
      percent: 112,
      text: 'Bushing outside diameter, right, across the track: 112 % (108–116 %)',
    },
    { kind: 'bar', percent: 240, text: 'Sprocket, left: 240 %' },
    { kind: 'bar', percent: 0, text: 'Link height, left: 0 %' },
    { kind: 'heading', level: 2, text: 'What is open' },
    {
      kind: 'call',
      call: 'open',
      word: 'open',
      text: 'Nothing bad was found, but something that could stop it is not known yet.',
    },
    { kind: 'list', items: ['Travel motor oil, right: not looked at.', 'Recoil spring: could not be seen.'] },
    { kind: 'heading', level: 2, text: 'Every call' },
    ...(['run', 'recheck', 'adjust', 'repair', 'park'] as const).map((call): Block => ({
      kind: 'call',
      call,
      word: call,
      text: `What ${call} means, in one short line.`,
    })),
    { kind: 'heading', level: 2, text: 'Photos' },
    ...Array.from({ length: 9 }, (_, index) => photoOf(index)),
    {
      kind: 'photo',
      sha256: 'f'.repeat(64),
      alt: 'Right track, the master joint',
      caption: '10. Right track, master joint. This picture is not on this phone.',
    },
    { kind: 'heading', level: 2, text: 'Take care' },
    {
      kind: 'text',
      role: 'caution',
      text: 'Grease through the skin is an emergency: to hospital at once, even without pain. Never loosen the nipple; ease the valve in small steps and no more than the manual says, face and body aside, watching the track.',
    },
    {
      kind: 'text',
      text: 'The maker’s manual, the site’s rules and a qualified person’s judgement come first.',
    },
    { kind: 'heading', level: 2, text: 'Signed' },
    { kind: 'signature', name: 'Çağrı İnönü', role: 'inspector', strokes, alt: 'Signature of Çağrı İnönü' },
    {
      kind: 'signature',
      name: 'Zoë Ψαρού',
      role: 'renter',
      strokes: [],
      alt: 'Not signed: a line to sign on',
    },
    {
      kind: 'code',
      content: 'sagline:seal:'.concat('0123456789abcdef'.repeat(4)),
      alt: 'QR code with the fingerprint of the seal',
      caption: 'Seal 0123 4567 89ab cdef · key fedc ba98 7654 3210',
    },
    { kind: 'text', role: 'small', text: 'Made with Sagline 0.1.0; sheet typical-135 version 3, rules 2.' },
    {
      kind: 'table',
      caption: 'Paper form',
      head: ['Item', 'Left', 'Right', 'Note'],
      figures: [],
      rows: ['Track sag', 'Link height', 'Bushing outside diameter', 'Grouser height'].map((item) => [
        item,
        '',
        '',
        '',
      ]),
    },
  ],
};

const made = new Map<string, PdfPicture>();

/** A picture with noise in it, so that its bytes do not shrink to nothing; none for the one that is not there. */
export function samplePhoto(sha256: string): Promise<PdfPicture | undefined> {
  const seed = Number.parseInt(sha256.charAt(0), 16);
  if (seed > 9) return Promise.resolve(undefined);
  const picture = made.get(sha256) ?? noise(seed);
  made.set(sha256, picture);
  return Promise.resolve(picture);
}

function noise(seed: number): PdfPicture {
  const [width, height] = seed % 3 === 2 ? [480, 640] : [640, 480];
  const data = new Uint8Array(width * height * 4);
  for (let at = 0; at < data.length; at += 4) {
    const x = (at / 4) % width;
    const y = Math.floor(at / 4 / width);
    const grain = ((x * 7919 + y * 104729 + seed) % 31) - 15;
    data.set(
      [90 + (x / width) * 90 + grain, 110 + (y / height) * 60 + grain, 90 + seed * 9 + grain, 255],
      at,
    );
  }
  return { bytes: jpeg.encode({ width, height, data }, 60).data, width, height };
}
