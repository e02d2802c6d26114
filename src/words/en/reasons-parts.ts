import type { Params } from '../../core/reason.ts';
import type { Formatter, Message } from '../format.ts';

const fixed =
  (text: string): Message =>
  () =>
    text;

/** "77 to 87 mm" where the band is known. */
function band({ lowMm, highMm }: Params, { depth }: Formatter): string {
  return typeof lowMm === 'number' && typeof highMm === 'number'
    ? ` (${depth(lowMm)} to ${depth(highMm)})`
    : '';
}

const by = ({ byMm }: Params, { depth }: Formatter): string =>
  typeof byMm === 'number' ? ` by ${depth(byMm)}` : '';

const readSize = ({ mm, limitMm }: Params, { depth }: Formatter): string =>
  typeof mm === 'number' && typeof limitMm === 'number'
    ? `${depth(mm)} read, limit ${depth(limitMm)}`
    : 'its limit';

const worn = ({ percent: value }: Params, { percent }: Formatter): string =>
  typeof value === 'number' ? `${percent(value)} worn` : 'Worn';

// Every model gets one turn; more only where its own manual says so (trade figures: one turn in six manuals).
const easeGrease =
  'clear stones and packed mud first, then ease the valve in small steps, no more than one turn unless this machine’s manual allows more, face and body aside. Never loosen the nipple; if no grease comes, stop.';
const easeIt = ({ tensioner }: Params): string =>
  tensioner === 'spring' ? 'slacken the tensioner as the manual says.' : easeGrease;

const wear: Readonly<Record<string, Message>> = {
  'wear.watch': (params, format) =>
    `${worn(params, format)} (${readSize(params, format)}). It is nearing its limit: look sooner next time and order in good time.`,
  'wear.limit': (params, format) =>
    `${worn(params, format)} (${readSize(params, format)}). It is at its limit: plan the job now.`,
  'wear.beyond': (params, format) =>
    `${worn(params, format)} (${readSize(params, format)}). It is far past its limit and wears its neighbours: light work until it is done.`,
  written: ({ text }) => String(text ?? ''),
};

const sag: Readonly<Record<string, Message>> = {
  'sag.tight': (params, format) =>
    `The track is too tight${by(params, format)}${band(params, format)}. Ease: ${easeIt(params)}`,
  'sag.loose': (params, format) =>
    `The track is too loose${by(params, format)}${band(params, format)}. Tighten it, then drive a few metres and read again.`,
  'sag.derailing': (params, format) =>
    `The track is loose${by(params, format)}${band(params, format)}, so loose that it can come off. Tighten it before it works; until then only straight and slowly.`,
  'sag.end-of-stroke-rubber': fixed(
    'Loose with no adjuster travel left. Rubber hardly stretches, so sudden slack suggests cords going: the track has to go unless you find a leak inside, a broken spring, a stuck idler, packing behind the yoke, a wrong or over-long track, or a worn idler or sprocket.',
  ),
  'sag.end-of-stroke-steel': fixed(
    'Loose with no adjuster travel left. First rule out a leak inside, a broken spring, a stuck idler, packing behind the yoke and a worn idler or sprocket; then it is pins and bushings, to turn or replace. Adjusting is no cure, and no link is taken out.',
  ),
  'sag-by-eye.slack': fixed('The track looks slack. Tighten it to the manual’s sag, then measure.'),
  'sag-by-eye.very-slack': fixed(
    'The track looks so slack that it can come off. Tighten it before it works; until then only straight and slowly.',
  ),
  'sag-by-eye.tight': (params) => `The track looks tight. Measure, and if it is, ease it: ${easeIt(params)}`,
  'adjuster-travel.little': fixed(
    'Little adjuster travel is left. Look sooner next time and find what took it up: pitch, idler, sprocket or a long track.',
  ),
  'adjuster-travel.end': fixed(
    'No adjuster travel is left: the next slack cannot be taken up. Find what took it up before then, and take no link out.',
  ),
  'adjuster-leak.weeping': fixed(
    'The adjuster seal weeps but holds its sag. Plan a seal; wipe it and look whether the sag changes.',
  ),
  'adjuster-leak.not-holding': fixed(
    'The adjuster seal weeps and the track is loose: it does not hold. Tighten for now, light work, and have the seal changed.',
  ),
  'adjuster-leak.valve-damaged': fixed(
    'Grease comes from a damaged valve or nipple, at a pressure that goes through skin. Hands off, keep clear, do not move the machine, call someone trained. Grease under the skin: to hospital at once, even without pain.',
  ),
  'recoil-spring.broken': fixed(
    'The recoil spring is broken: the track cannot give way and can come off. It may still be loaded: never heat or dismantle it. Only move the machine to where it can be changed.',
  ),
  'packing.packed': fixed(
    'Mud or stones are packed in, which tightens the track. Clean it out, then look and read the sag again. Never ease grease on packed mud: the track is slack once it falls out.',
  ),
};

const idler: Readonly<Record<string, Message>> = {
  'idler-rim.worn': fixed('The idler rim is worn. Look sooner next time, and look at its side play.'),
  'idler-rim.cracked': fixed(
    'The idler rim is cracked and can break up. Move it only to where the idler can be changed.',
  ),
  'idler-play.play': fixed('The idler has side play, which lets the track wander. Shim or renew its guides.'),
  'idler-play.track-climbs': fixed(
    'The track climbs the idler and is about to come off. Only move it straight and slowly; tightening alone is no cure.',
  ),
  'idler-leak.weeping': fixed('The idler’s oil seal weeps. Look sooner next time.'),
  'idler-leak.leaking': fixed('The idler leaks oil but turns. Plan a seal or an idler before it runs dry.'),
  'idler-mount.cracked': fixed(
    'The idler mount is cracked and carries the whole track pull. Move it only to where it can be repaired.',
  ),
  'idler-flange.worn': fixed('The idler flange is worn, which also hides tread wear. Look sooner next time.'),
  'idler-flange.broken': fixed(
    'The idler flange is broken: nothing keeps the track on there. Move it only, straight and slowly.',
  ),
};

const seized = (name: string): Message =>
  fixed(
    `The ${name} is seized and is being dragged flat. Change it now, since it ruins the track; one new one among lightly worn ones is fine, among much lower ones it carries all the load.`,
  );
const flat = (name: string): Message =>
  fixed(
    `The ${name} has a flat: it has stood still while the track ran. Change it now, since it ruins the track.`,
  );

const rollers: Readonly<Record<string, Message>> = {
  'carrier-turn.rough': fixed('The carrier roller turns roughly. Look sooner next time.'),
  'carrier-turn.seized': seized('carrier roller'),
  'carrier-leak.weeping': fixed('The carrier roller’s oil seal weeps. Look sooner next time.'),
  'carrier-leak.leaking': fixed('The carrier roller leaks but turns. Plan a new one before it seizes.'),
  'carrier-flat.flat': flat('carrier roller'),
  'slide-wear.worn': fixed('The slide plate is worn. Look sooner next time.'),
  'slide-wear.worn-through': fixed(
    'The slide plate is worn through and the track cuts into the frame. Change it now.',
  ),
  'roller-turn.rough': fixed(
    'The roller turns roughly. Look sooner next time, and feel it for heat after a drive.',
  ),
  'roller-turn.seized': seized('roller'),
  'roller-leak.weeping': fixed('The roller’s oil seal weeps. Look sooner next time.'),
  'roller-leak.leaking': fixed('The roller leaks but turns. Plan a new one before it seizes.'),
  'roller-flat.flat': flat('roller'),
  'roller-flange.worn': fixed(
    'The roller flange is worn. Look sooner next time, and look at sag and alignment.',
  ),
  'roller-flange.broken': fixed(
    'A roller flange is broken: the track can come off there. Move it only, straight and slowly.',
  ),
  'roller-flange.missing': fixed(
    'A roller flange is missing: the track can come off there. Move it only, straight and slowly.',
  ),
  'roller-flange.track-climbs': fixed(
    'The track climbs the roller and is about to come off. Move it only, straight and slowly; tightening alone is no cure.',
  ),
  'roller-bolts.loose': fixed(
    'Roller bolts are loose. Tighten them as the manual says before it works; look at the threads.',
  ),
  'roller-bolts.missing': fixed(
    'Roller bolts are missing: the roller can drop and throw the track. Move it only until new ones are in.',
  ),
  'roller-wire.wrapped': fixed(
    'Wire or rope is wound round the hub and cuts the oil seal. Cut it out now, with the engine off, and look for a leak.',
  ),
};

const drive: Readonly<Record<string, Message>> = {
  'sprocket-teeth.worn': fixed(
    'The sprocket is worn on drive face and root. Look sooner next time; change it together with the track.',
  ),
  'sprocket-teeth.hooked': fixed(
    'The sprocket teeth are hooked and eat any new track. Change sprocket and track together.',
  ),
  'sprocket-teeth.broken': fixed(
    'A sprocket tooth is broken: the track jumps there. Move it only to where the sprocket can be changed.',
  ),
  'sprocket-bolts.loose': fixed(
    'Sprocket bolts are loose. Tighten them as the manual says before it works; look for worn holes.',
  ),
  'sprocket-bolts.missing': fixed(
    'Sprocket bolts are missing: the rest shear next. Move it only until new ones are in.',
  ),
  'motor-oil.weeping': fixed('The travel motor weeps oil. Check its level and look sooner next time.'),
  'motor-oil.leaking': fixed(
    'The travel motor leaks oil. Check its level today; light work until its oil seal is changed. Oil also swells rubber.',
  ),
  'motor-bolts.loose': fixed(
    'Travel motor bolts are loose. Tighten them as the manual says before it works.',
  ),
  'motor-bolts.missing': fixed(
    'Travel motor bolts are missing: the rest shear next. Move it only until new ones are in.',
  ),
  'suspension-arms.worn': fixed('Suspension arms or bogies are worn. Look sooner next time.'),
  'suspension-arms.cracked': fixed(
    'A suspension arm or bogie is cracked and can let go. Move it only to where it can be changed.',
  ),
  'track-frame.bent': fixed(
    'The track frame is bent, so rollers and track run out of line. Have it straightened; light work until then.',
  ),
  'track-frame.cracked': fixed(
    'The track frame is cracked. Move it only to where it can be repaired; a crack runs on under load.',
  ),
  'guards.bent': fixed('A guard is bent. See that it touches nothing that turns.'),
  'guards.missing': fixed('A guard is missing: stones reach what it protected. Fit one.'),
};

const machine: Readonly<Record<string, Message>> = {
  'drift.drifts': fixed(
    'The machine drifts to one side. Compare sag and pitch of both sides; if they are alike, look at the drive.',
  ),
  'jumping.jumps': fixed(
    'The track jumps on the sprocket. Set the sag first; if it still jumps, it is mesh (sprocket, pitch, wrong track) and more tension is the wrong cure.',
  ),
  'drive-noise.popping': fixed(
    'It pops while driving. At correct sag that is mesh between sprocket and track; more tension is the wrong cure.',
  ),
  'drive-noise.grinding': fixed(
    'It grinds while driving. Find which roller, idler or drive it is before it seizes; light work until then.',
  ),
  'heat.one-hot': fixed(
    'One roller or joint is much hotter than the others: overloaded, dry or dragging. Find out which, light work until then.',
  ),
  'tracks-alike.different': fixed(
    'The two tracks differ in make, width or tread: it drifts and wears unevenly. Match them at the next change.',
  ),
  'track-off.off-inside': fixed(
    'The track is off, inwards. Do not drive. Before refitting look for horns, idler side play, sprocket, packing and kinked cords.',
  ),
  'track-off.off-outside': fixed(
    'The track is off, outwards. Do not drive. Before refitting look for sag, horns, idler side play, roller flanges and kinked cords.',
  ),
};

export const partReasons: Readonly<Record<string, Message>> = {
  ...wear,
  ...sag,
  ...idler,
  ...rollers,
  ...drive,
  ...machine,
};
