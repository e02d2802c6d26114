import type { Message } from '../format.ts';

const fixed =
  (text: string): Message =>
  () =>
    text;

/** Why the rubber, the cords and the inside of a rubber track need something. */
const rubber: Readonly<Record<string, Message>> = {
  'cord.showing': fixed(
    'Steel cord shows where the lugs are worn away. Order the track; until then light work only, keep off sharp stone and salt water, and look at it daily.',
  ),
  'cord.cut': fixed(
    'Cord strands are cut. A cut cord cannot be mended: the whole track has to go. Only move the machine straight and slowly to where it can be changed.',
  ),
  'cord.half-cut': fixed(
    'Half a cord band or more is cut, so the track can part under load. Do not work with it; the whole track has to go.',
  ),
  'cord.rust-under': fixed(
    'Rust is creeping along the cords under the rubber and parts them from it. The track can fail without warning; the whole track has to go.',
  ),
  'cord.parted': fixed(
    'The cords have parted. Do not move the machine on this track; change it where it stands.',
  ),
  'crack.watch': ({ lengthMm, depthMm }, { depth }) =>
    typeof lengthMm === 'number' && typeof depthMm === 'number'
      ? `A crack ${depth(lengthMm)} long and ${depth(depthMm)} deep can be left for now. Mark its ends and see at the next walk whether it grows.`
      : 'This crack can be left for now. Mark its ends and see at the next walk whether it grows.',
  'crack.repair': ({ lengthMm, depthMm }, { depth }) =>
    typeof lengthMm === 'number' && typeof depthMm === 'number'
      ? `A crack ${depth(lengthMm)} long and ${depth(depthMm)} deep lets water in to the cords. Clean, fill and seal it before it reaches them.`
      : 'This crack lets water in to the cords. Clean, fill and seal it before it reaches them.',
  'crack.cord': fixed(
    'Cord can be seen in the crack. Seal it at once, before water rusts the cord; light work until that is done.',
  ),
  'bulge.bulge': fixed(
    'The rubber has lifted from the cords or a core beneath. It cannot be glued back: press it, mark its edge, look daily, and plan a new track if it is soft or grows.',
  ),
  'lug-damage.chunked': fixed(
    'Pieces are torn out of the lugs. Usable; look for cord or core at the bottom of each tear.',
  ),
  'lug-damage.torn-out': fixed(
    'A lug is torn out. Usable, with much less grip in mud; look for cord where it was.',
  ),
  'lug-damage.many-torn': ({ count }, { number }) =>
    `${typeof count === 'number' ? number(count) : 'Many'} lugs are torn out, about a tenth of the loop or more. Grip and ride are gone and the carcass takes the blows: plan a new track.`,
  'edges.cut': fixed(
    'The edge is cut. Seal it before water reaches the cords, and find out which kerb or stone did it.',
  ),
  'edges.cord-showing': fixed(
    'Cord shows at the edge. Order the track; until then light work only, and keep away from kerbs and concrete edges.',
  ),
  'cores.rusty': fixed('A core is slightly rusty. Usable; watch whether the rust creeps under the rubber.'),
  'cores.bent': fixed(
    'A core is bent, so it meets sprocket and rollers badly. Light work; check sag and sprocket, and look again soon.',
  ),
  'cores.loose': fixed(
    'A metal core has come away from the rubber. It cannot be fixed in again: order the track, light work until then, and check the sprocket for hooked teeth.',
  ),
  'cores.missing': fixed(
    'A metal core is gone, and its neighbours now carry its load. Order the track; light work until then.',
  ),
  'cores.neighbours-gone': fixed(
    'Two neighbouring cores are gone: the sprocket can miss and the track come off. Only move it straight and slowly to where the track can be changed.',
  ),
  'drive-lugs.worn': fixed('Drive lugs are worn. Look sooner next time, and look at the sprocket with them.'),
  'drive-lugs.chipped': fixed(
    'Drive lugs are chipped. Look for stones in the sprocket, and look again soon.',
  ),
  'drive-lugs.missing': fixed(
    'A drive lug is gone. Light work and gentle turns; look daily, since the next one carries its load.',
  ),
  'drive-lugs.neighbours-gone': fixed(
    'Two neighbouring drive lugs are gone: the drive can slip through and the track come off. Only move it straight and slowly to where the track can be changed.',
  ),
  'guide-horns.worn': fixed('Guide horns are worn. Check sag, roller flanges and idler side play.'),
  'guide-horns.broken': fixed(
    'A guide horn is broken. Light work, no side slopes; check sag, roller flanges and idler side play.',
  ),
  'guide-horns.neighbours-gone': fixed(
    'Two or more neighbouring guide horns are gone: nothing keeps the track on there. Only move it straight and slowly; the track has to go.',
  ),
  'roller-path.worn': fixed(
    'The path the rollers run on is worn. Look sooner next time for cores showing through.',
  ),
  'roller-path.core-exposed': fixed(
    'Cores show in the roller path. It can still be run; note how much of the loop it is and watch it grow.',
  ),
  'roller-path.over-half': ({ share }, { percent }) =>
    `Cores show in the roller path over ${typeof share === 'number' ? percent(share * 100) : 'more than half'} of the loop. It still runs, but the track is at its end: plan a new one.`,
  'swelling.soft': fixed(
    'Rubber is softened. Wash off oil, fuel, salt or fertiliser, and find where it comes from.',
  ),
  'swelling.swollen': fixed(
    'Rubber is swollen by oil or chemicals and loses its hold on cords and cores. It does not recover: plan a new track, and stop the leak first.',
  ),
  'tread-way.reversed': fixed(
    'The tread runs the wrong way round: less grip and poor cleaning. Turn or swap it when the track next comes off.',
  ),
  'kinked-cords.kinked': fixed(
    'The cords are kinked from coming off and will break there. Do not work with this track; move it only to where it can be changed.',
  ),
};

/** Why links, pins, bushings and shoes of a chain need something. */
const chain: Readonly<Record<string, Message>> = {
  'bushing.watch': ({ percent: worn }, { percent }) =>
    `${typeof worn === 'number' ? `${percent(worn)} of the way to the turn limit` : 'Near the turn limit'}. Plan the turn now if it pays: not turned before, joints oiled, none cracked, links able to outlast it; on small excavators it seldom does.`,
  'bushing.turn': fixed(
    'At the turn limit. Turn pins and bushings now if the joints hold their oil and the links can outlast them; later it is too late, and on small excavators new ones are often cheaper.',
  ),
  'bushing.cannot-turn': fixed(
    'At the turn limit and not worth turning: turned before, dry, cracked, or with links that will not outlast it. Plan new pins and bushings, or the chain.',
  ),
  'bushing.past': fixed(
    'Past the turn limit: the hard layer is going and a turn no longer helps. Plan new pins and bushings, or the chain, together with the sprocket.',
  ),
  'link-sides.scalloped': fixed(
    'The rails are scalloped: the links are well worn. Measure their height over several links.',
  ),
  'link-sides.peened': fixed(
    'The rail edges are peened over. Look at roller flanges and sag, and look again soon.',
  ),
  'pin-bosses.touching': fixed(
    'The pin bosses touch roller flanges or guards: the rails are worn out. Plan links, light work until then, before flanges and bosses break.',
  ),
  'links-cracked.one': fixed(
    'One link is cracked. It can be changed alone if it matches its neighbours in wear and hand; that takes a press or a repair link and opens a sealed joint.',
  ),
  'links-cracked.several': fixed(
    'Several links are cracked: the chain has to go, not the links. Move it only to where that can be done.',
  ),
  'bushing-crack.cracked': fixed(
    'A bushing is cracked. It soon runs dry and eats the sprocket: change it, and do not turn this chain.',
  ),
  'master-joint.loose': fixed(
    'The master joint is loose: the chain can open under load. Stop work; move it only straight and slowly to where the joint can be closed.',
  ),
  'master-joint.open': fixed(
    'The master joint is open. Do not move the machine. A track can fall forward when it opens: keep clear of its front.',
  ),
  'pin-walk.walking': fixed(
    'A pin is walking out of its link: the joint can come apart. Stop work; move it only straight and slowly to where the pin can be pressed back or changed.',
  ),
  'joints.dry': fixed(
    'A joint is dry: it wears fast inside and cannot be turned with the others. Mark it and measure the pitch across it.',
  ),
  'chain-way.reversed': fixed('The chain is on the wrong way round. Turn it when the track is next opened.'),
  'snaking.snaking': fixed(
    'The chain snakes: the joints have side play. Measure the pitch over several links before any new sprocket.',
  ),
  'shoes.bent': fixed('A shoe is bent. Change it alone, with new bolts.'),
  'shoes.cracked': fixed('A shoe is cracked. Change it alone, with new bolts; light work until then.'),
  'shoes.missing': fixed(
    'A shoe is missing, so its two links are no longer tied. Move it only, straight and slowly, until a shoe with new bolts is on.',
  ),
  'shoe-bolts.one-loose': fixed(
    'A shoe bolt is loose. Fit new bolts and tighten them as the manual says; a loose one wears the holes oval.',
  ),
  'shoe-bolts.too-few': fixed(
    'A shoe hangs on too few bolts: it can tear off and take the link with it. Move it only, until new bolts are in.',
  ),
  'bolt-holes.ovalled': fixed(
    'Bolt holes are worn oval, so no bolt will stay tight: it is the link that has to go.',
  ),
  'pads.torn': fixed('A pad is torn. Look again soon, and look at its bolts.'),
  'pads.missing': fixed('A pad is missing: steel meets the ground there. Change it alone; keep off paving.'),
  'pad-bolts.loose': fixed('A pad bolt is loose. Fit a new one; light work until then.'),
  'pad-bolts.missing': fixed('A pad bolt is missing. Fit new bolts before the pad tears off.'),
  'alignment.toed': fixed(
    'The track frame is out of line, so flanges and link sides grind. Have it measured and set; look for a worn pivot.',
  ),
};

export const trackReasons: Readonly<Record<string, Message>> = { ...rubber, ...chain };
