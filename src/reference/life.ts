import type { Sourced, LifeFigure, LifeTables } from '../core/life.ts';
import type { Source } from '../core/source.ts';
import { estimate } from './sources.ts';

const weak = (text: string): Source => ({ mark: 'weak', text });
const said = (value: number, text: string): Sourced => ({ value, source: estimate(text) });

const chain = ['link-height', 'pitch', 'bushing-od'];
const steel = ['steel', 'steel-pads', 'rubber-shoes'] as const;
const rubber = ['rubber-cored', 'rubber-coreless'] as const;

const byGround = 'Rubber track life by ground, an unsigned trade article (2025); taken wide';
const loaderLife =
  'Compact track loaders 400 to 2,000 h, mostly 1,200 to 1,600 h: Cleveland Brothers, How to replace CTL tracks, 2021';
const miniLife = 'Mini excavators 1,200 to 2,000 h, about 1,000 h in hard use: two track sellers’ figures';
const chainLife =
  'Excavator chain 5,000 to 8,000 h in general digging, 2,000 to 4,000 h in rock or much travel: from memory, common practice';
const dozerLife =
  'Dozer undercarriages laid out to wear together at about 4,000 h: Equipment World, January 2020; taken wide';
const rollerLife = 'Excavator rollers often outlast two sets of chain: a trade forum; taken wide';

/** Narrower figures first. Hours of engine time from new to the limit, wide on purpose. */
const figures: readonly LifeFigure[] = [
  {
    id: 'rubber-hard-ground',
    items: ['lug-depth'],
    tracks: rubber,
    grounds: ['rock', 'demolition'],
    lowHours: 400,
    highHours: 1200,
    source: weak(byGround),
  },
  {
    id: 'rubber-soft-ground',
    items: ['lug-depth'],
    tracks: rubber,
    grounds: ['soft-soil'],
    lowHours: 1000,
    highHours: 2800,
    source: weak(byGround),
  },
  {
    id: 'rubber-loader',
    items: ['lug-depth'],
    tracks: rubber,
    kinds: ['track-loader', 'dozer'],
    lowHours: 600,
    highHours: 2000,
    source: { mark: 'published', text: loaderLife },
  },
  {
    id: 'rubber-excavator',
    items: ['lug-depth'],
    tracks: rubber,
    lowHours: 700,
    highHours: 2400,
    source: weak(miniLife),
  },
  {
    id: 'dozer-chain',
    items: [...chain, 'grouser'],
    tracks: steel,
    kinds: ['dozer', 'track-loader'],
    lowHours: 1800,
    highHours: 6000,
    source: { mark: 'published', text: dozerLife },
  },
  {
    id: 'chain-hard-ground',
    items: [...chain, 'grouser'],
    tracks: steel,
    grounds: ['rock', 'demolition'],
    lowHours: 1500,
    highHours: 5000,
    source: { mark: 'from-memory', text: chainLife },
  },
  {
    id: 'chain',
    items: [...chain, 'grouser'],
    tracks: steel,
    lowHours: 3000,
    highHours: 10_000,
    source: { mark: 'from-memory', text: chainLife },
  },
  {
    id: 'pads',
    items: ['pad-height'],
    lowHours: 500,
    highHours: 2500,
    source: estimate('Bolted pads and rubber shoes: our estimate, taken wide'),
  },
  {
    id: 'dozer-rollers',
    items: ['roller-tread', 'idler-tread'],
    kinds: ['dozer', 'track-loader'],
    lowHours: 2500,
    highHours: 9000,
    source: { mark: 'published', text: dozerLife },
  },
  {
    id: 'rollers',
    items: ['roller-tread', 'idler-tread'],
    lowHours: 4000,
    highHours: 15_000,
    source: weak(rollerLife),
  },
];

const damage = 'Rubber tracks ended by cuts and broken cores: our estimate, none published by ground';

const fault = 'Hours until a fault that was found stops the machine: our estimate';

/** What the forecast starts from until a machine and a fleet have taught it better. */
export const life: LifeTables = {
  figures,
  turning: {
    little: said(1.2, 'Turning little: our estimate; turning on hard ground is what wears most'),
    some: said(1, 'Turning some: what life figures take for granted'),
    much: said(0.7, 'Turning much: our estimate; turning on hard ground is what wears most'),
  },
  kappa: said(1, 'How unevenly wear goes, in percent: our estimate'),
  readingError: said(2, 'Placing a tool on a worn part, in percent of wear: our estimate'),
  newError: said(2, 'How far new parts of one kind differ, in percent of wear: our estimate'),
  damage: {
    'soft-soil': said(0.1, damage),
    mixed: said(0.15, damage),
    gravel: said(0.2, damage),
    rock: said(0.5, damage),
    demolition: said(0.6, damage),
    paving: said(0.1, damage),
    unknown: said(0.2, damage),
  },
  faultHours: {
    adjust: said(800, fault),
    repair: said(600, fault),
    replace: said(200, fault),
  },
  turnedShare: {
    value: 0.7,
    source: weak(
      'Turning nearly doubles the life of pins and bushings (US Navy NAVEDTRA 14273); on smaller machines owners get less (trade forums); 0.7 is our estimate',
    ),
  },
  builtUpShare: said(0.8, 'Built-up grousers against new shoes: our estimate'),
  wornSprocketShare: {
    value: 1 / 1.2,
    source: weak('Sprockets changed with the tracks give 20 % more track life: a track seller’s figure'),
  },
  rubberYears: said(8, 'Rubber hardens and cracks with age: our estimate, no maker’s figure found'),
};
