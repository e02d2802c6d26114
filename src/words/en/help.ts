import type { SagMethod } from '../../core/limits.ts';

/** How to read one item or sag method. Long, so that only the help opens this file. */
export interface HelpWords {
  readonly steps: readonly string[];
  /** What goes wrong. */
  readonly wrong: string;
  /** Where the figure it is judged by comes from. */
  readonly from: string;
}

const sheet = 'New size and limit come from the limit sheet, each with its source beside it.';
const rule = 'Judged by the rule set; each rule names its source.';
const practice = 'Common practice; the rule set says how it is judged and from where.';
const sagSheet = 'The range comes from the limit sheet and counts only for this way of measuring.';

const leak = (part: string): HelpWords => ({
  steps: [
    `Wipe the hub of the ${part} and look for fresh oil.`,
    'A collar of oily dust means that it weeps.',
    'Drops or running oil mean that it leaks.',
  ],
  wrong: 'Grease or splashed water is taken for oil. Wipe, wait, look again.',
  from: practice,
});

const bolts = (what: string): HelpWords => ({
  steps: [
    `Look at every one of the ${what}.`,
    'A shiny ring, rust trail or gap under the head means that it moved.',
    'Tap it: a loose one sounds dull.',
  ],
  wrong: 'Painted or muddy heads hide a gap. Brush them first.',
  from: practice,
});

const turns = (part: string): HelpWords => ({
  steps: [
    `One person turns the track slowly; the other watches the ${part} from the side, out of reach.`,
    'A chalk mark on the rim shows whether it turns.',
  ],
  wrong:
    'A roller that stands clear of the track does not turn though it is sound. Look for a shiny flat spot.',
  from: practice,
});

const flat = (part: string): HelpWords => ({
  steps: [
    `Look along the rim of the ${part} while the track turns slowly.`,
    'A flat spot is a shiny patch where the roller stood still and was dragged.',
  ],
  wrong: 'The spot may be underneath: turn the track once round.',
  from: practice,
});

const byEye = (first: string, second: string, wrong: string): HelpWords => ({
  steps: [first, second],
  wrong,
  from: practice,
});

/** By sag method. */
const sagHelp: Readonly<Record<SagMethod, HelpWords>> = {
  'straightedge-grouser': {
    steps: [
      'Level ground. Drive forward about one track length and let it roll out without brakes.',
      'Lay a straightedge over the grousers, from the idler to the carrier roller or the sprocket.',
      'Read from the edge down to the TIP of the lowest grouser.',
      'With carrier rollers: read both spans; their mean counts.',
    ],
    wrong: 'Reading to the shoe plate instead of the tip makes it look slack, and it is then set too tight.',
    from: sagSheet,
  },
  'straightedge-shoe': {
    steps: [
      'Level ground. Drive forward about one track length and let it roll out.',
      'Lay a straightedge over the top run.',
      'Read from the edge down to the PLATE of the lowest shoe, between its grousers.',
    ],
    wrong: 'This reads more than to the grouser tip, by the height of the grouser. Never mix the two.',
    from: sagSheet,
  },
  'straightedge-slide': {
    steps: [
      'Machine on the ground. Lay a straightedge on the track from the idler to the slide plate or carrier roller.',
      'Read the largest gap under the edge.',
    ],
    wrong: 'Ranges are only a few millimetres here: mud under the edge spoils it.',
    from: sagSheet,
  },
  string: {
    steps: [
      'Pull a string tight over the top run, from end to end.',
      'Read from the string down to the tip of the lowest grouser or lug.',
    ],
    wrong: 'A string that hangs or touches on the way reads too little.',
    from: sagSheet,
  },
  'frame-to-shoe': {
    steps: [
      'Raise the side with boom and arm, and BLOCK the frame.',
      'Two people: turn the track two rounds back, two rounds forward, stop, engine off.',
      'At mid-frame, read from the bottom of the frame to the back of the shoe.',
      'Read from outside, standing where you are safe even if it drops.',
    ],
    wrong: 'Packed mud lifts the track and reads too little. Many sheets want it clean.',
    from: sagSheet,
  },
  'frame-to-track': {
    steps: [
      'Raise the side and BLOCK the frame. Joint mark of a rubber track at top centre, if it has one.',
      'Turn the track, stop, engine off.',
      'At mid-frame, read from the bottom of the frame to the inner face of the track.',
    ],
    wrong: 'From the frame is not from the roller: the two differ by several centimetres.',
    from: sagSheet,
  },
  'roller-gap': {
    steps: [
      'Raise the side and BLOCK the frame. Joint mark at top centre, if it has one.',
      'Engine off. Take a bolt or dowel of the lower size, then of the upper size.',
      'Push it from outside between the middle roller and the track: the lower one goes in, the upper one does not.',
    ],
    wrong:
      'Never a hand or finger in the gap. Ask the sheet whether it means the inner face, the ridge or the guide.',
    from: sagSheet,
  },
  deflection: {
    steps: [
      'Lay a straightedge over the span.',
      'Push down in the middle with the load that the sheet names, by a spring balance or known weight.',
      'Read how far the track goes below the edge.',
    ],
    wrong: 'Another load gives another number. Type the load that you used.',
    from: sagSheet,
  },
  retreat: {
    steps: [
      'Tighten until all slack is out of the top run. Mark the idler at the frame.',
      'Ease the adjuster as its caution says, roll the machine a little.',
      'Read how far the idler came back from the mark.',
    ],
    wrong: 'Do not leave it at the tight setting: a tight track wears much faster.',
    from: sagSheet,
  },
};

/** By item id. */
const itemHelp: Readonly<Record<string, HelpWords>> = {
  drift: byEye(
    'On level ground let go of steering corrections for 20–30 m, forward and back, both speeds.',
    'Note the side to which it pulls.',
    'Drift may come from a travel motor, from unequal sag or from unequal pitch: compare both sides first.',
  ),
  jumping: byEye(
    'Drive and stop, forward and back, and listen for a bang at the sprocket.',
    'Turn once each way, slowly.',
    'Jumping at the right sag is bad mesh, a worn sprocket or a stretched chain; more tension is the wrong cure.',
  ),
  'drive-noise': byEye(
    'Walk beside it at a safe distance while somebody drives slowly.',
    'Popping comes from the mesh, grinding from stones, bearings or the final drive.',
    'One side at a time: noise carries through the frame.',
  ),
  heat: byEye(
    'Directly after the drive, engine off: an infrared thermometer, or the back of a gloved hand NEAR each roller and joint. Do not touch.',
    'One that is much warmer than its neighbours is dry, overloaded or seizing.',
    'Sun on one side warms that side. Compare like with like.',
  ),
  'tracks-alike': byEye(
    'Compare make, width, tread and link count of both sides as moulded or stamped.',
    'Look at the wear as well: a new track beside an old one pulls to one side.',
    'Two treads of the same width may still differ in guide or links.',
  ),
  'track-off': byEye(
    'Look which way it came off: towards the machine or outwards.',
    'Then look for the cause: sag before, guides, idler play, packing, horns, sprocket.',
    'Putting it back without the cause found, it comes off again.',
  ),
  'sag-before': byEye(
    'Ask the operator, before the track goes back on.',
    'A slack track comes off in turns and on side slopes; a tight one with packed mud or a stone.',
    'Once it is back on, nobody can tell any more.',
  ),
  'kinked-cords': byEye(
    'Where the track was bent, look and feel along the edge for a kink or a hard ridge.',
    'Look at both bands.',
    'A kinked cord looks whole and parts later.',
  ),
  sag: {
    steps: [
      'Choose the way in which your limit sheet measures; the drawing shows each.',
      'Note whether it stands or is raised, how clean it is, and which way it last drove.',
    ],
    wrong:
      'The same number means another tension by another way of measuring. Only like is compared with like.',
    from: sagSheet,
  },
  'sag-by-eye': byEye(
    'Look along the top run from the side.',
    'Tight is nearly a straight line; very slack hangs on the frame or shows guides between rollers.',
    'The eye cannot tell right from a little slack. Where it matters, measure.',
  ),
  'lug-depth': {
    steps: [
      'Clean a lug to bare rubber.',
      'Set a depth gauge on top of the lug, and read down to the lowest rubber beside it.',
      'Mark the lug, so that the next walk reads the same one. Read the shortest lug too.',
    ],
    wrong:
      'Mud in the groove, or a rounded edge instead of the middle of the lug. An average hides the shortest one.',
    from: 'The limit comes from the sheet. Hardly any manual prints the new height: measure a new track or the least worn edge, else it is an estimate.',
  },
  cord: {
    steps: [
      'Roll the whole loop past you, half a loop at a time.',
      'Look at the grooves between lugs, the edges and both sides of each core.',
      'Count the links on which steel cord shows. Look whether strands are cut, and how much of the band.',
    ],
    wrong: 'Rust stains tell of cord before it shows. A cut cord cannot be mended.',
    from: rule,
  },
  crack: {
    steps: [
      'Take the longest and the deepest crack or cut.',
      'Measure its length along the crack, and its depth with a thin gauge at the deepest place.',
      'Bend it open a little: is cord to be seen in it?',
    ],
    wrong: 'Fine weather cracks are not meant. Dirt in the crack makes it look shallow.',
    from: 'Makers differ: some ask for length and depth together. ' + rule,
  },
  bulge: byEye(
    'Look along the outer face for a blister or a raised place.',
    'Press it: soft means that the layers part.',
    'A lump of mud. Clean it off.',
  ),
  'lug-damage': byEye(
    'Look for pieces torn from lugs, over the whole loop.',
    'Count the lugs that are worse than nicked.',
    'Even wear is not damage; it is read as lug depth.',
  ),
  edges: byEye(
    'Look along both edges over the whole loop.',
    'Kerbs, steel and concrete edges cut them.',
    'The inner edge is seen only while the track rolls.',
  ),
  cores: {
    steps: [
      'Look at the inner face, one core after the other.',
      'Rap it lightly: a loose one sounds dull and moves.',
      'Count those that are gone, and whether two neighbours are.',
    ],
    wrong: 'Light rust is harmless; rust that creeps under the rubber is not.',
    from: rule,
  },
  'drive-lugs': byEye(
    'Look at the faces of the drive lugs that the sprocket pushes.',
    'Compare the forward face with the reverse face.',
    'A worn sprocket eats new lugs: look at both together.',
  ),
  'guide-horns': byEye(
    'Look along the row of guide horns on the inner face.',
    'One-sided wear tells of side slopes, a crooked idler or loose sag.',
    'A broken row lets the track climb off.',
  ),
  'roller-path': byEye(
    'Look at the two paths on the inner face on which the rollers run.',
    'Where steel cores show, say how much of the way round.',
    'Mud fills worn paths. Clean a stretch of them.',
  ),
  swelling: byEye(
    'Press the rubber with a thumb, near oily places first.',
    'Compare with a clean place of the same track.',
    'Warm rubber is softer all over; swelling is in patches.',
  ),
  'tread-way': byEye(
    'Compare the pattern with the arrow on the track or with the manual.',
    'Compare both sides: they mirror each other.',
    'Tracks swapped from side to side run backwards.',
  ),
  'link-height': {
    steps: [
      'Clean the rail and the shoe beside it.',
      'Stand a depth gauge on the rail, and read down to the face of the shoe.',
      'Several links: the lowest counts.',
    ],
    wrong:
      'A bent shoe or dirt on it falsifies every reading. Read at the middle of the link, not over the pin boss.',
    from: sheet,
  },
  pitch: {
    steps: [
      'Put a block between sprocket and track, and drive against it gently to pull the chain tight. Engine off.',
      'Keep two links away from the master pin.',
      'Tape from the edge of one pin to the same edge of another, over four links.',
      'Count the LINKS between, not the pins: five pins span four links.',
    ],
    wrong:
      'Divided by the pins instead of the links it comes out a fifth too short. A slack chain reads too little.',
    from: sheet,
  },
  'bushing-od': {
    steps: [
      'Clean a bushing on the bottom run or at the sprocket.',
      'Caliper across it in two directions, a quarter turn apart.',
      'The smaller counts. The worn side is often the one that pushes in reverse.',
    ],
    wrong: 'The worn side may hide against the sprocket. Look at the bushing itself, not at the sprocket.',
    from: 'The limit depends on how much shock the work brings. ' + sheet,
  },
  grouser: {
    steps: [
      'Take up the sag and clean the shoe.',
      'At the CENTRE of the shoe width, read from the plate of the shoe to the tip of the grouser.',
    ],
    wrong: 'Corners wear first: at the edge it reads too little.',
    from: sheet,
  },
  'pad-height': {
    steps: ['Clean the pad.', 'Read from the steel to the top of the rubber, where the pad is lowest.'],
    wrong: 'Pads wear to a wedge. Read both ends.',
    from: sheet,
  },
  'link-sides': byEye(
    'Lay a short straightedge along the rail of a link.',
    'Hollows mean scallops; a lip at the edge means flared.',
    'Dried mud makes a rail look even.',
  ),
  'pin-bosses': byEye(
    'Look under a roller, where its flange passes the pin bosses.',
    'A shiny ring on the boss means that they touch: rail and roller are worn together.',
    'A bent link touches alone; compare several.',
  ),
  'links-cracked': byEye(
    'Clean the links around pins and bolts, where cracks begin.',
    'Count the cracked ones over the whole loop.',
    'Scratches are straight and shallow; a crack takes dirt and rust.',
  ),
  'bushing-crack': byEye(
    'Look at the bushings while the track turns slowly over the sprocket.',
    'A crack runs lengthwise and is often rusty.',
    'Only the outer half is seen at a time.',
  ),
  'bushing-turned': byEye(
    'Look at the upper half of the bushings, away from the sprocket.',
    'Wear there too means that they have been turned once.',
    'Turned ones are not turned again.',
  ),
  'master-joint': byEye(
    'Find the master link: other bolts, or another pin.',
    'Look for a gap in its joint, loose bolts or a moving pin.',
    'If it opens, the track comes off: do not drive to look again.',
  ),
  'pin-walk': byEye(
    'Look along both sides of the chain at the pin ends.',
    'A pin that stands out on one side and is sunk on the other walks.',
    'Some masters stand out by design; look at the others.',
  ),
  joints: {
    steps: [
      'Drive a little, then go along the chain.',
      'A dry joint squeaks, shows red dust at its ends, and is warm.',
      'Count the dry ones.',
    ],
    wrong: 'Red mud is not red dust. Wipe it.',
    from: practice,
  },
  shoes: byEye(
    'Look along the row of shoes for one out of line.',
    'Cracks begin at bolt holes and grouser roots.',
    'New shoes on an old chain hide its age.',
  ),
  'shoe-bolts': bolts('shoe bolts'),
  'bolt-holes': byEye(
    'Where a bolt was loose, look at the hole beside the head.',
    'An oval hole cannot hold a bolt any more.',
    'Tightening hides it for a day.',
  ),
  pads: byEye(
    'Look along the row of pads.',
    'Count torn and missing ones.',
    'A missing pad scuffs its neighbours and the paving.',
  ),
  'pad-bolts': bolts('pad bolts or clips'),
  'chain-way': byEye(
    'Look which end of the link leads over the sprocket, and compare with the manual.',
    'Compare both sides.',
    'After a repair, a chain is sometimes put on backwards.',
  ),
  snaking: byEye(
    'Stand in front and look along the chain.',
    'A snaking chain has worn joints; lever it sideways at mid-span.',
    'A bent shoe looks like snaking at one place only.',
  ),
  'idler-rim': byEye(
    'Look at the whole rim while the track turns slowly.',
    'Cracks run from the rim inwards.',
    'Mud in the spokes hides them.',
  ),
  'idler-play': byEye(
    'Lever the idler sideways with a bar, from outside, engine off.',
    'Look how far it moves, and whether the track has climbed on its flange.',
    'A packed idler does not move though it is worn.',
  ),
  'idler-leak': leak('idler'),
  'idler-mount': byEye(
    'Look at yoke, guides and bolts of the idler.',
    'Cracks begin at welds and bolt holes.',
    'Look from above and from inside too.',
  ),
  'idler-flange': byEye(
    'Look at the centre flange all round.',
    'A sharp edge is worn; chips are broken.',
    'A worn flange makes the tread look better than it is.',
  ),
  'idler-tread': {
    steps: [
      'Clean tread and flange.',
      'Lay the gauge on the flange and read down to the tread, on the outer side, then on the inner side.',
      'Say how the flange itself is.',
    ],
    wrong:
      'The reading grows as the tread wears and shrinks as the flange wears: a worn flange hides tread wear.',
    from: sheet,
  },
  'adjuster-travel': byEye(
    'Look how far the idler stands out of the frame, and what is left of the slot.',
    'At its end the idler block meets the stop.',
    'At the end of the stroke look for the cause first: leak inside, stuck idler, packing, worn chain.',
  ),
  'adjuster-leak': {
    steps: [
      'Look at the cylinder and at the valve: grease outside?',
      'Keep face and hands away. Do not touch a damaged valve or nipple.',
    ],
    wrong: 'Grease from the gun lies around the nipple. Fresh grease further in is a leak.',
    from: practice,
  },
  'recoil-spring': byEye(
    'Look through the opening of the frame at the coils.',
    'A gap or a coil out of line is a break.',
    'Never put a hand in, never take it apart.',
  ),
  packing: byEye(
    'Look behind the idler yoke, between rollers, and at the root of the sprocket.',
    'A packed track is tight though its sag looks right.',
    'Clear it before any sag is read and before any grease is eased.',
  ),
  'carrier-turn': turns('carrier roller'),
  'carrier-leak': leak('carrier roller'),
  'carrier-flat': flat('carrier roller'),
  'slide-wear': byEye(
    'Look at the plate under the top run.',
    'Grooved is worn; when the frame shows it is worn through.',
    'Mud lies on it. Scrape it free.',
  ),
  'roller-turn': turns('bottom roller'),
  'roller-leak': leak('bottom roller'),
  'roller-flat': flat('bottom roller'),
  'roller-flange': byEye(
    'Look at the flanges of each roller, outside and inside.',
    'Sharp is worn; chipped is broken.',
    'Where the track has climbed on a flange, stop: it is about to come off.',
  ),
  'roller-bolts': bolts('roller bolts or collars'),
  'roller-wire': byEye(
    'Look at both ends of the hub for wire, rope or plastic.',
    'It cuts into the oil seal: cut it out, engine off.',
    'It may sit behind the flange, out of sight.',
  ),
  'roller-tread': {
    steps: [
      'C: measure the link height at one link.',
      'Let the roller stand on that same link.',
      'B: measure from the roller’s centre down to the shoe.',
      'The diameter is A = 2 × (B − C).',
    ],
    wrong: 'Each millimetre of error makes two of diameter. Use it only where the limit is wide.',
    from: sheet,
  },
  'sprocket-teeth': byEye(
    'Look at drive face and root of several teeth, forward and reverse side.',
    'Hooked: the tooth leans over like a thumb. The tip does not count.',
    'Teeth may look new while the bushings are gone. Judge both.',
  ),
  'sprocket-bolts': bolts('sprocket or segment bolts'),
  'motor-oil': leak('travel motor'),
  'motor-bolts': bolts('travel motor bolts'),
  'suspension-arms': byEye(
    'Look at each arm or bogie from the side: all alike in height?',
    'Look for cracks at the pivot and for torn rubber.',
    'Uneven ground tilts arms. Stand level.',
  ),
  'track-frame': byEye(
    'Look along the frame for a bend, and at its welds for cracks.',
    'Look at the mount of the idler, and at the cross beam.',
    'Fresh paint over a weld is a warning sign.',
  ),
  guards: byEye(
    'Look at the guards at rollers, motor and idler.',
    'A bent one rubs on the track.',
    'A missing guard leaves stones to do the damage.',
  ),
  alignment: byEye(
    'Measure between both tracks at the idlers, and again at the sprockets.',
    'The two should be alike.',
    'One-sided wear of flanges and link sides tells the same.',
  ),
};

/** Help by item id or sag method. */
export const help: Readonly<Record<string, HelpWords>> = { ...sagHelp, ...itemHelp };
