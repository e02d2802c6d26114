import type { ReasonTexts } from './reason-line.ts';

const sag: ReasonTexts = {
  'sag.end-of-stroke-rubber':
    'Loose with no adjuster travel left. Rubber hardly stretches, so sudden slack suggests cords going: the track has to go unless you find a leak inside, a broken spring, a stuck idler, packing behind the yoke, a wrong or over-long track, or a worn idler or sprocket.',
  'sag.end-of-stroke-steel':
    'Loose with no adjuster travel left. First rule out a leak inside, a broken spring, a stuck idler, packing behind the yoke and a worn idler or sprocket; then it is pins and bushings, to turn or replace. Adjusting is no cure, and no link is taken out.',
  'sag-by-eye.slack': 'The track looks slack. Tighten it to the manual’s sag, then measure.',
  'sag-by-eye.very-slack':
    'The track looks so slack that it can come off. Tighten it before it works; until then only straight and slowly.',
  'adjuster-travel.little':
    'Little adjuster travel is left. Look sooner next time and find what took it up: pitch, idler, sprocket or a long track.',
  'adjuster-travel.end':
    'No adjuster travel is left: the next slack cannot be taken up. Find what took it up before then, and take no link out.',
  'adjuster-leak.weeping':
    'The adjuster seal weeps but holds its sag. Plan a seal; wipe it and look whether the sag changes.',
  'adjuster-leak.not-holding':
    'The adjuster seal weeps and the track is loose: it does not hold. Tighten for now, light work, and have the seal changed.',
  'adjuster-leak.valve-damaged':
    'Grease comes from a damaged valve or nipple, at a pressure that goes through skin. Hands off, keep clear, do not move the machine, call someone trained. Grease under the skin: to hospital at once, even without pain.',
  'recoil-spring.broken':
    'The recoil spring is broken: the track cannot give way and can come off. It may still be loaded: never heat or dismantle it. Only move the machine to where it can be changed.',
  'packing.packed':
    'Mud or stones are packed in, which tightens the track. Clean it out, then look and read the sag again. Never ease grease on packed mud: the track is slack once it falls out.',
};

const idler: ReasonTexts = {
  'idler-rim.worn': 'The idler rim is worn. Look sooner next time, and look at its side play.',
  'idler-rim.cracked':
    'The idler rim is cracked and can break up. Move it only to where the idler can be changed.',
  'idler-play.play': 'The idler has side play, which lets the track wander. Shim or renew its guides.',
  'idler-play.track-climbs':
    'The track climbs the idler and is about to come off. Only move it straight and slowly; tightening alone is no cure.',
  'idler-leak.weeping': 'The idler’s oil seal weeps. Look sooner next time.',
  'idler-leak.leaking': 'The idler leaks oil but turns. Plan a seal or an idler before it runs dry.',
  'idler-mount.cracked':
    'The idler mount is cracked and carries the whole track pull. Move it only to where it can be repaired.',
  'idler-flange.worn': 'The idler flange is worn, which also hides tread wear. Look sooner next time.',
  'idler-flange.broken':
    'The idler flange is broken: nothing keeps the track on there. Move it only, straight and slowly.',
};

const seized = (name: string): string =>
  `The ${name} is seized and is being dragged flat. Change it now, since it ruins the track; one new one among lightly worn ones is fine, among much lower ones it carries all the load.`;
const flat = (name: string): string =>
  `The ${name} has a flat: it has stood still while the track ran. Change it now, since it ruins the track.`;

const rollers: ReasonTexts = {
  'carrier-turn.rough': 'The carrier roller turns roughly. Look sooner next time.',
  'carrier-turn.seized': seized('carrier roller'),
  'carrier-leak.weeping': 'The carrier roller’s oil seal weeps. Look sooner next time.',
  'carrier-leak.leaking': 'The carrier roller leaks but turns. Plan a new one before it seizes.',
  'carrier-flat.flat': flat('carrier roller'),
  'slide-wear.worn': 'The slide plate is worn. Look sooner next time.',
  'slide-wear.worn-through':
    'The slide plate is worn through and the track cuts into the frame. Change it now.',
  'roller-turn.rough': 'The roller turns roughly. Look sooner next time, and feel it for heat after a drive.',
  'roller-turn.seized': seized('roller'),
  'roller-leak.weeping': 'The roller’s oil seal weeps. Look sooner next time.',
  'roller-leak.leaking': 'The roller leaks but turns. Plan a new one before it seizes.',
  'roller-flat.flat': flat('roller'),
  'roller-flange.worn': 'The roller flange is worn. Look sooner next time, and look at sag and alignment.',
  'roller-flange.broken':
    'A roller flange is broken: the track can come off there. Move it only, straight and slowly.',
  'roller-flange.missing':
    'A roller flange is missing: the track can come off there. Move it only, straight and slowly.',
  'roller-flange.track-climbs':
    'The track climbs the roller and is about to come off. Move it only, straight and slowly; tightening alone is no cure.',
  'roller-bolts.loose':
    'Roller bolts are loose. Tighten them as the manual says before it works; look at the threads.',
  'roller-bolts.missing':
    'Roller bolts are missing: the roller can drop and throw the track. Move it only until new ones are in.',
  'roller-wire.wrapped':
    'Wire or rope is wound round the hub and cuts the oil seal. Cut it out now, with the engine off, and look for a leak.',
};

const drive: ReasonTexts = {
  'sprocket-teeth.worn':
    'The sprocket is worn on drive face and root. Look sooner next time; change it together with the track.',
  'sprocket-teeth.hooked':
    'The sprocket teeth are hooked and eat any new track. Change sprocket and track together.',
  'sprocket-teeth.broken':
    'A sprocket tooth is broken: the track jumps there. Move it only to where the sprocket can be changed.',
  'sprocket-bolts.loose':
    'Sprocket bolts are loose. Tighten them as the manual says before it works; look for worn holes.',
  'sprocket-bolts.missing':
    'Sprocket bolts are missing: the rest shear next. Move it only until new ones are in.',
  'motor-oil.weeping': 'The travel motor weeps oil. Check its level and look sooner next time.',
  'motor-oil.leaking':
    'The travel motor leaks oil. Check its level today; light work until its oil seal is changed. Oil also swells rubber.',
  'motor-bolts.loose': 'Travel motor bolts are loose. Tighten them as the manual says before it works.',
  'motor-bolts.missing':
    'Travel motor bolts are missing: the rest shear next. Move it only until new ones are in.',
  'suspension-arms.worn': 'Suspension arms or bogies are worn. Look sooner next time.',
  'suspension-arms.cracked':
    'A suspension arm or bogie is cracked and can let go. Move it only to where it can be changed.',
  'track-frame.bent':
    'The track frame is bent, so rollers and track run out of line. Have it straightened; light work until then.',
  'track-frame.cracked':
    'The track frame is cracked. Move it only to where it can be repaired; a crack runs on under load.',
  'guards.bent': 'A guard is bent. See that it touches nothing that turns.',
  'guards.missing': 'A guard is missing: stones reach what it protected. Fit one.',
};

const machine: ReasonTexts = {
  'drift.drifts':
    'The machine drifts to one side. Compare sag and pitch of both sides; if they are alike, look at the drive.',
  'jumping.jumps':
    'The track jumps on the sprocket. Set the sag first; if it still jumps, it is mesh (sprocket, pitch, wrong track) and more tension is the wrong cure.',
  'drive-noise.popping':
    'It pops while driving. At correct sag that is mesh between sprocket and track; more tension is the wrong cure.',
  'drive-noise.grinding':
    'It grinds while driving. Find which roller, idler or drive it is before it seizes; light work until then.',
  'heat.one-hot':
    'One roller or joint is much hotter than the others: overloaded, dry or dragging. Find out which, light work until then.',
  'tracks-alike.different':
    'The two tracks differ in make, width or tread: it drifts and wears unevenly. Match them at the next change.',
  'track-off.off-inside':
    'The track is off, inwards. Do not drive. Before refitting look for horns, idler side play, sprocket, packing and kinked cords.',
  'track-off.off-outside':
    'The track is off, outwards. Do not drive. Before refitting look for sag, horns, idler side play, roller flanges and kinked cords.',
};

/** What is to be done about sag, idlers, rollers, drive and frame. */
export const partReasonTexts: ReasonTexts = {
  ...sag,
  ...idler,
  ...rollers,
  ...drive,
  ...machine,
};
