import type { Caution } from '../../core/walk.ts';

export interface CautionWords {
  readonly title: string;
  readonly lines: readonly string[];
}

/** Stands under every caution. */
export const firstWord =
  'The maker’s manual, the site’s rules and a qualified person’s judgement come first. The app’s numbers are an aid.';

/** What is ticked by hand under a caution. */
export const cautionTick = 'Done and understood';

/** The order of the lines is the order in which they are done. */
export const cautionWords: Readonly<Record<Caution, CautionWords>> = {
  ground: {
    title: 'Before you go near',
    lines: [
      'Level, firm ground. Bucket and blade down, swing locked, brakes on.',
      'Engine off, key out, tag on the controls.',
      'Let hot parts cool. Gloves and eye protection on.',
      'Keep hands out of pinch points: between track, rollers, idler and sprocket.',
    ],
  },
  raised: {
    title: 'Raised machine',
    lines: [
      'Never go under it, or reach under it, while only its own hydraulics hold it up: they sink.',
      'Block the frame or set it on rated stands. Chock the track that stays down.',
      'Engine off, key out and tagged when nobody has to turn the track.',
      'Read roller gaps from outside, with a stick, bolt or dowel of the right size: never with a hand.',
      'Stand where you are safe even if it drops.',
    ],
  },
  'track-turning': {
    title: 'The track will turn',
    lines: [
      'Two people: one stays at the controls, one looks.',
      'Agree on signs first. Nobody in reach while the track moves.',
      'Slow speed. Stand to the side, never in line with the track.',
      'Stop the track and the engine before anyone comes closer to measure.',
    ],
  },
  grease: {
    title: 'Grease adjuster: extreme pressure',
    lines: [
      'GREASE THROUGH THE SKIN IS AN EMERGENCY: to hospital at once, even without pain. Say it is grease under high pressure.',
      'Clear a stone or packed sprocket first. Never ease grease on a packed track.',
      'Never loosen the grease nipple. Hands off a damaged nipple or valve.',
      'Ease the relief valve in small steps, no more than one turn in all. More only if this machine’s own manual prints it.',
      'Face and body aside, eye protection on; watch the track, not the valve. If no grease comes, stop.',
    ],
  },
  spring: {
    title: 'Spring behind the idler',
    lines: [
      'Never heat, cut or dismantle the recoil spring.',
      'A broken track or spring may leave it loaded: keep out of its line.',
      'Threaded tensioner: turn only the adjusting nut, as the manual says. Never take it out under load.',
    ],
  },
  'track-down': {
    title: 'Track off or coming off',
    lines: [
      'A track can fall forward when its master pin is out: nobody in front of it.',
      'Hold the ends with a sling or blocks before the pin moves.',
      'Ease the tension first. Eye protection on when a pin is driven.',
      'Keep fingers out from between the track and wheels.',
    ],
  },
};
