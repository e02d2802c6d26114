import type { FunctionComponent } from 'preact';
import { Blocked, Front } from './machine-drawings.tsx';
import { CordStates, Crack, DriveLugs, LugDepth, TrackNames } from './rubber-drawings.tsx';
import {
  Deflection,
  FrameToShoe,
  FrameToTrack,
  Retreat,
  RollerGap,
  StraightedgeGrouser,
  StraightedgeShoe,
  StraightedgeSlide,
  StringOver,
} from './sag-drawings.tsx';
import { BushingOd, Grouser, IdlerTread, LinkHeight, Pitch, RollerTread } from './steel-drawings.tsx';
import { AdjusterTravel, SprocketTeeth } from './wheel-drawings.tsx';

/** By item id, sag method, or the id of what else is explained by a drawing (`front`, `raised`). */
export const drawings: Readonly<Record<string, FunctionComponent>> = {
  front: Front,
  raised: Blocked,
  'straightedge-grouser': StraightedgeGrouser,
  'straightedge-shoe': StraightedgeShoe,
  'straightedge-slide': StraightedgeSlide,
  string: StringOver,
  'frame-to-shoe': FrameToShoe,
  'frame-to-track': FrameToTrack,
  'roller-gap': RollerGap,
  deflection: Deflection,
  retreat: Retreat,
  'lug-depth': LugDepth,
  crack: Crack,
  cord: CordStates,
  cores: TrackNames,
  'guide-horns': TrackNames,
  'roller-path': TrackNames,
  'drive-lugs': DriveLugs,
  pitch: Pitch,
  'bushing-od': BushingOd,
  'link-height': LinkHeight,
  grouser: Grouser,
  'roller-tread': RollerTread,
  'idler-tread': IdlerTread,
  'idler-flange': IdlerTread,
  'adjuster-travel': AdjusterTravel,
  'sprocket-teeth': SprocketTeeth,
};
