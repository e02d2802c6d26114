import type { ReasonTexts } from './reason-line.ts';

/** Why the rubber, the cords and the inside of a rubber track need something. */
const rubber: ReasonTexts = {
  'cord.showing':
    'Steel cord shows where the lugs are worn away. Order the track; until then light work only, keep off sharp stone and salt water, and look at it daily.',
  'cord.cut':
    'Cord strands are cut. A cut cord cannot be mended: the whole track has to go. Only move the machine straight and slowly to where it can be changed.',
  'cord.half-cut':
    'Half a cord band or more is cut, so the track can part under load. Do not work with it; the whole track has to go.',
  'cord.rust-under':
    'Rust is creeping along the cords under the rubber and parts them from it. The track can fail without warning; the whole track has to go.',
  'cord.parted': 'The cords have parted. Do not move the machine on this track; change it where it stands.',
  'crack.cord':
    'Cord can be seen in the crack. Seal it at once, before water rusts the cord; light work until that is done.',
  'bulge.bulge':
    'The rubber has lifted from the cords or a core beneath. It cannot be glued back: press it, mark its edge, look daily, and plan a new track if it is soft or grows.',
  'lug-damage.chunked':
    'Pieces are torn out of the lugs. Usable; look for cord or core at the bottom of each tear.',
  'lug-damage.torn-out': 'A lug is torn out. Usable, with much less grip in mud; look for cord where it was.',
  'edges.cut':
    'The edge is cut. Seal it before water reaches the cords, and find out which kerb or stone did it.',
  'edges.cord-showing':
    'Cord shows at the edge. Order the track; until then light work only, and keep away from kerbs and concrete edges.',
  'cores.rusty': 'A core is slightly rusty. Usable; watch whether the rust creeps under the rubber.',
  'cores.bent':
    'A core is bent, so it meets sprocket and rollers badly. Light work; check sag and sprocket, and look again soon.',
  'cores.loose':
    'A metal core has come away from the rubber. It cannot be fixed in again: order the track, light work until then, and check the sprocket for hooked teeth.',
  'cores.missing':
    'A metal core is gone, and its neighbours now carry its load. Order the track; light work until then.',
  'cores.neighbours-gone':
    'Two neighbouring cores are gone: the sprocket can miss and the track come off. Only move it straight and slowly to where the track can be changed.',
  'drive-lugs.worn': 'Drive lugs are worn. Look sooner next time, and look at the sprocket with them.',
  'drive-lugs.chipped': 'Drive lugs are chipped. Look for stones in the sprocket, and look again soon.',
  'drive-lugs.missing':
    'A drive lug is gone. Light work and gentle turns; look daily, since the next one carries its load.',
  'drive-lugs.neighbours-gone':
    'Two neighbouring drive lugs are gone: the drive can slip through and the track come off. Only move it straight and slowly to where the track can be changed.',
  'guide-horns.worn': 'Guide horns are worn. Check sag, roller flanges and idler side play.',
  'guide-horns.broken':
    'A guide horn is broken. Light work, no side slopes; check sag, roller flanges and idler side play.',
  'guide-horns.neighbours-gone':
    'Two or more neighbouring guide horns are gone: nothing keeps the track on there. Only move it straight and slowly; the track has to go.',
  'roller-path.worn': 'The path the rollers run on is worn. Look sooner next time for cores showing through.',
  'roller-path.core-exposed':
    'Cores show in the roller path. It can still be run; note how much of the loop it is and watch it grow.',
  'swelling.soft':
    'Rubber is softened. Wash off oil, fuel, salt or fertiliser, and find where it comes from.',
  'swelling.swollen':
    'Rubber is swollen by oil or chemicals and loses its hold on cords and cores. It does not recover: plan a new track, and stop the leak first.',
  'tread-way.reversed':
    'The tread runs the wrong way round: less grip and poor cleaning. Turn or swap it when the track next comes off.',
  'kinked-cords.kinked':
    'The cords are kinked from coming off and will break there. Do not work with this track; move it only to where it can be changed.',
};

/** Why links, pins, bushings and shoes of a chain need something. */
const chain: ReasonTexts = {
  'bushing.turn':
    'At the turn limit. Turn pins and bushings now if the joints hold their oil and the links can outlast them; later it is too late, and on small excavators new ones are often cheaper.',
  'bushing.cannot-turn':
    'At the turn limit and not worth turning: turned before, dry, cracked, or with links that will not outlast it. Plan new pins and bushings, or the chain.',
  'bushing.past':
    'Past the turn limit: the hard layer is going and a turn no longer helps. Plan new pins and bushings, or the chain, together with the sprocket.',
  'link-sides.scalloped':
    'The rails are scalloped: the links are well worn. Measure their height over several links.',
  'link-sides.peened': 'The rail edges are peened over. Look at roller flanges and sag, and look again soon.',
  'pin-bosses.touching':
    'The pin bosses touch roller flanges or guards: the rails are worn out. Plan links, light work until then, before flanges and bosses break.',
  'links-cracked.one':
    'One link is cracked. It can be changed alone if it matches its neighbours in wear and hand; that takes a press or a repair link and opens a sealed joint.',
  'links-cracked.several':
    'Several links are cracked: the chain has to go, not the links. Move it only to where that can be done.',
  'bushing-crack.cracked':
    'A bushing is cracked. It soon runs dry and eats the sprocket: change it, and do not turn this chain.',
  'master-joint.loose':
    'The master joint is loose: the chain can open under load. Stop work; move it only straight and slowly to where the joint can be closed.',
  'master-joint.open':
    'The master joint is open. Do not move the machine. A track can fall forward when it opens: keep clear of its front.',
  'pin-walk.walking':
    'A pin is walking out of its link: the joint can come apart. Stop work; move it only straight and slowly to where the pin can be pressed back or changed.',
  'joints.dry':
    'A joint is dry: it wears fast inside and cannot be turned with the others. Mark it and measure the pitch across it.',
  'chain-way.reversed': 'The chain is on the wrong way round. Turn it when the track is next opened.',
  'snaking.snaking':
    'The chain snakes: the joints have side play. Measure the pitch over several links before any new sprocket.',
  'shoes.bent': 'A shoe is bent. Change it alone, with new bolts.',
  'shoes.cracked': 'A shoe is cracked. Change it alone, with new bolts; light work until then.',
  'shoes.missing':
    'A shoe is missing, so its two links are no longer tied. Move it only, straight and slowly, until a shoe with new bolts is on.',
  'shoe-bolts.one-loose':
    'A shoe bolt is loose. Fit new bolts and tighten them as the manual says; a loose one wears the holes oval.',
  'shoe-bolts.too-few':
    'A shoe hangs on too few bolts: it can tear off and take the link with it. Move it only, until new bolts are in.',
  'bolt-holes.ovalled':
    'Bolt holes are worn oval, so no bolt will stay tight: it is the link that has to go.',
  'pads.torn': 'A pad is torn. Look again soon, and look at its bolts.',
  'pads.missing': 'A pad is missing: steel meets the ground there. Change it alone; keep off paving.',
  'pad-bolts.loose': 'A pad bolt is loose. Fit a new one; light work until then.',
  'pad-bolts.missing': 'A pad bolt is missing. Fit new bolts before the pad tears off.',
  'alignment.toed':
    'The track frame is out of line, so flanges and link sides grind. Have it measured and set; look for a worn pivot.',
};

export const trackReasonTexts: ReasonTexts = { ...rubber, ...chain };
