import type { ItemLimits, SagSpec } from '../core/limits.ts';
import { sagByPitch } from './sag-by-pitch.ts';
import { estimate, published } from './sources.ts';
import { band, hundred, inMm, newSize, sheet, type Sheet } from './sheet-rows.ts';

const lookUp =
  'Starting values for the class, not for your machine. Read maker and pitch off a link, and enter the new and limit sizes of that chain.';

const ofClass = estimate('Typical of chains of this class; sizes differ by maker and pitch');

/** Shares of the new size that one published chain page gives as its limits. */
const shares = {
  link: 96.5 / 105.5,
  bushingLight: 51.6 / 60.7,
  bushingHeavy: 54.1 / 60.7,
  pitch: 174.5 / 171.5,
};

const round1 = (value: number): number => Math.round(value * 10) / 10;

const link = (at: number, tolerance: number): ItemLimits =>
  inMm(
    'link-height',
    newSize(at, tolerance, ofClass),
    hundred(
      round1(at * shares.link),
      'service',
      estimate('91 % of new, as 105.5 to 96.5 mm of service page 56320'),
    ),
  );

const bushing = (at: number, tolerance: number): ItemLimits =>
  inMm(
    'bushing-od',
    newSize(at, tolerance, ofClass),
    {
      ...hundred(
        round1(at * shares.bushingLight),
        'turn',
        estimate('85 % of new, light shock, as service page 56320'),
      ),
      loads: ['light'],
    },
    {
      ...hundred(
        round1(at * shares.bushingHeavy),
        'turn',
        estimate('89 % of new, average and heavy shock, as service page 56320'),
      ),
      loads: ['average', 'heavy'],
    },
  );

const pitch = (at: number): ItemLimits =>
  inMm(
    'pitch',
    newSize(at, 0.5, ofClass),
    hundred(
      round1(at * shares.pitch),
      'turn',
      estimate('1.75 % growth, as Komatsu D31EX-21 (154.3 to 157 mm) and D39 (171.5 to 174.5 mm)'),
    ),
  );

const grouser = (at: number, limit: number): ItemLimits =>
  inMm(
    'grouser',
    newSize(at, 4, ofClass),
    hundred(limit, 'service', estimate('Two fifths of a new triple grouser')),
  );

const pads = inMm(
  'pad-height',
  newSize(40, 10, estimate('Height of a new bolt-on pad; differs much by maker')),
  hundred(15, 'replace', estimate('Before bolt heads or steel touch the ground')),
);

const raised = (low: number, high: number, text: string): SagSpec =>
  band('frame-to-shoe', 'raised', low, high, published(text), { clean: 'clean' });

const straightedge = (source: SagSpec['source']): SagSpec =>
  band('straightedge-grouser', 'ground', 10, 30, source);
const komatsu = published('Komatsu PC118MR-8 p. 315; PC210-11 p. 377 (11–21 t)');

/** Ten millimetres either way of the sag that goes with the usual pitch of the class. */
function byPitch(pitchMm: number): readonly SagSpec[] {
  const sagMm = sagByPitch(pitchMm);
  if (sagMm === undefined) return [];
  const source = estimate(
    `${sagMm} mm at ${pitchMm} mm pitch (sottocarri.it tensioning page), 10 mm either way`,
  );
  return [band('straightedge-grouser', 'ground', sagMm - 10, sagMm + 10, source)];
}

/** Excavators on steel by operating mass, lightest class first. */
export const excavatorSheets: readonly Sheet[] = [
  sheet(
    'steel-mini',
    'Starting sheet: steel, mini excavator up to 4.5 t',
    lookUp,
    [grouser(16, 6), pads],
    [
      raised(120, 140, 'Hitachi ZX33U-5A/38U-5A p. 251 (3–4 t)'),
      band('straightedge-grouser', 'ground', 5, 15, published('Komatsu PC27MR-2 p. 193 (2.7 t)')),
      band('frame-to-track', 'raised', 144, 154, published('Takeuchi TB128FR p. 140 (2.8 t, steel or pads)')),
      band('roller-gap', 'raised', 25, 30, published('Komatsu PC15MRX-1 p. 170 (1.5 t)')),
    ],
  ),
  sheet(
    'steel-5t',
    'Starting sheet: steel, excavator 4.5 to 7 t',
    lookUp,
    [grouser(18, 7), pads],
    [raised(140, 160, 'Hitachi ZX48U/55U/65USB-5A p. 251 (5–6.5 t)'), ...byPitch(135)],
  ),
  sheet(
    'steel-8t',
    'Starting sheet: steel, excavator 7 to 10 t',
    lookUp,
    [grouser(20, 8), pads],
    [
      // The print contradicts itself: 9.0 in is 228.6 mm, so that the stricter side is taken.
      {
        ...raised(
          210,
          245,
          'Hitachi Zaxis 70/80/85US p. 223 (7–8.5 t), which prints 210–245 mm and 8.3–9.0 in',
        ),
        also: { low: 8.3, high: 9, unit: 'in', resolution: 0.1 },
      },
      ...byPitch(154),
    ],
  ),
  sheet(
    'steel-13t',
    'Starting sheet: steel, excavator 10 to 15 t',
    lookUp,
    [link(84, 4), pitch(171.5), bushing(46, 3), grouser(24, 10), pads],
    [raised(250, 280, 'Hitachi ZX120-3, ZX120-6, ZX135US-6 (12–13.5 t)'), straightedge(komatsu)],
  ),
  sheet(
    'steel-17t',
    'Starting sheet: steel, excavator 15 to 19 t',
    lookUp,
    [link(92, 6), bushing(52, 4), grouser(25, 10), pads],
    [raised(285, 320, 'Hitachi ZX160-3/-6, ZX180-3 (16–18 t)'), straightedge(komatsu)],
  ),
  sheet(
    'steel-23t',
    'Starting sheet: steel, excavator 19 to 28 t',
    lookUp,
    [link(104, 4), pitch(190), bushing(59, 3), grouser(26, 10), pads],
    [raised(300, 335, 'Hitachi ZX200-3/-6 to ZX270-3, ZX225US-6 (20–27 t)'), straightedge(komatsu)],
  ),
  sheet(
    'steel-32t',
    'Starting sheet: steel, excavator 28 to 40 t',
    lookUp,
    [link(116, 6), bushing(65, 4), grouser(30, 12), pads],
    [
      raised(340, 380, 'Hitachi ZX280-3, ZX330-3/-6, ZX345US-6 (28–35 t)'),
      straightedge(estimate('Printed for 11–21 t; taken for larger ones')),
    ],
  ),
];
