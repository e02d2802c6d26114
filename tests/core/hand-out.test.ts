import { describe, expect, test } from 'vitest';
import { handedOutAt, ledBy, markedIn, isHandOutFor, openedBy } from '../../src/core/hand-out.ts';
import { missingShots, shotsOf } from '../../src/core/shots.ts';
import type { PlacedReading } from '../../src/core/states.ts';
import { stepsOf } from '../../src/core/steps.ts';
import { corners, isRental, purposes, type Walk } from '../../src/core/walk.ts';
import { finding, machineOf, mm, read, unseen, walkOf } from './made.ts';

const rubber = machineOf('rubber-cored');
const steel = machineOf('steel-pads');
const short = walkOf({ purpose: 'hand-out', depth: 'short' });
const stepsFor = (walk: Walk = short, machine = rubber) => stepsOf(machine, walk, 'ground');
const ids = (all: readonly { readonly id: string }[]): readonly string[] => all.map(({ id }) => id);

test('[RW2] only a hand-out and a return are rental walks', () => {
  expect(purposes.filter(isRental)).toEqual(['hand-out', 'rental-return']);
});

describe('the sequence of pictures', () => {
  test('[RW3] plate and meter come first, then once round with every marked lug and both sprockets', () => {
    expect(ids(shotsOf(short, stepsFor()))).toEqual([
      'plate',
      'meter',
      'front-left',
      'left.track.lug-depth.s1',
      'left.track.lug-depth.s2',
      'rear-left',
      'left.sprocket',
      'rear-right',
      'right.sprocket',
      'right.track.lug-depth.s1',
      'right.track.lug-depth.s2',
      'front-right',
    ]);
  });

  test('[RW3] from whichever corner, it holds the same pictures, each once', () => {
    const wanted = [...ids(shotsOf(short, stepsFor()))].sort();
    for (const corner of corners) {
      const walk = walkOf({ ...short, corner });
      const shots = ids(shotsOf(walk, stepsFor(walk)));
      expect(shots[2], corner).toBe(corner);
      expect([...shots].sort(), corner).toEqual(wanted);
    }
  });

  test('[RW3] on a chain its links, shoes and pads are marked, and no roller is', () => {
    const walk = walkOf({ depth: 'full', opened: ['roller-tread', 'idler-tread'] });
    const marks = shotsOf(walk, stepsFor(walk, steel)).flatMap(({ of }) =>
      of.kind === 'mark' && of.side === 'left' ? [`${of.item} ${of.spot}`] : [],
    );
    expect(marks).toEqual([
      'link-height 1',
      'link-height 2',
      'pitch 1',
      'bushing-od 1',
      'bushing-od 2',
      'grouser 1',
      'pad-height 1',
    ]);
  });

  test('[RW4] a picture is missing until it is taken or left out with a reason', () => {
    const shots = shotsOf(short, stepsFor());
    const missing = missingShots(shots, [{ shot: 'plate' }, {}], {
      skipped: [{ shot: 'meter', why: 'guarded' }],
    });
    expect(ids(missing)).toEqual(ids(shots).slice(2));
  });
});

const lug = (place: string, spot: number, value: number, n = spot): PlacedReading =>
  read(place, 'lug-depth', mm(value), { n, spot });

describe('a return led by its hand-out', () => {
  const handedOut = [
    lug('left.track', 1, 21),
    lug('left.track', 2, 19),
    lug('left.track', 3, 17),
    lug('left.track', 1, 22, 9),
    lug('right.track', 2, 18, 4),
    read('right.track', 'lug-depth', unseen('mud')),
    read('left.track', 'cord', finding('none')),
  ];
  const marked = markedIn(handedOut);
  const back = walkOf({ purpose: 'rental-return', depth: 'short' });
  const steps = stepsFor(back);
  const led = ledBy(steps, marked);

  test('[RW5] the lugs marked at hand-out are asked first, also those that this depth leaves out', () => {
    expect(ids(led).slice(0, 4)).toEqual([
      'side-left.lug-depth.s1',
      'side-left.lug-depth.s2',
      'side-left.lug-depth.s3',
      'side-right.lug-depth.s2',
    ]);
    expect(ids(led.slice(0, 4).map((step) => ({ id: handedOutAt(step, marked)?.item ?? '' })))).toEqual(
      Array.from({ length: 4 }, () => 'lug-depth'),
    );
  });

  test('[RW5] no other question is lost, doubled or moved', () => {
    expect(ids(led).filter((id) => !ids(led).slice(0, 4).includes(id))).toEqual(
      ids(steps).filter((id) => !ids(led).slice(0, 4).includes(id)),
    );
    expect(new Set(ids(led)).size).toBe(led.length);
    expect(ids(ledBy(steps, []))).toEqual(ids(steps));
  });

  test('[RW5] of several readings of one mark the first counts, and what could not be reached is no mark', () => {
    const sizes = marked.map(({ place, reading }) => [
      place,
      reading.what.kind === 'length' && reading.what.mm,
    ]);
    expect(sizes).toEqual([
      ['left.track', 21],
      ['left.track', 19],
      ['left.track', 17],
      ['right.track', 18],
    ]);
  });

  test('[RW5] what only the hand-out measured is opened', () => {
    const links = [read('left.track', 'link-height', mm(90)), read('left.track', 'grouser', mm(40))];
    expect(openedBy(markedIn(links), back)).toEqual(['link-height']);
    const opened = walkOf({ ...back, opened: ['link-height'] });
    const chain = ledBy(stepsFor(opened, steel), markedIn(links));
    expect(ids(chain).slice(0, 2)).toEqual(['side-left.link-height.s1', 'side-left.grouser.s1']);
  });

  test.each([
    ['another walk of the machine made for that', 'walk/out', {}, true],
    ['the return itself', 'walk/back', {}, false],
    ['one of another machine', 'walk/out', { machine: 'machine/other' }, false],
    ['one made for something else', 'walk/out', { purpose: 'jobsite' }, false],
  ] as const)('[RC68] the hand-out of a return: %s', (_, key, more, is) => {
    const walk = walkOf({ machine: 'machine/m', purpose: 'hand-out', ...more });
    expect(isHandOutFor({ key: 'walk/back', machine: 'machine/m' }, key, walk)).toBe(is);
  });
});
