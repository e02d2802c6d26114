import type { JSX } from 'preact';
import { drawingLabels as words } from '../../words/en/drawings.ts';
import css from '../parts/drawing.module.css';
import { Arrow, Cross, Drawing, Ground, Label, Leader, Measure, path, type Point } from './drawing.tsx';
import { hanging, RubberRun, Shoes, Sprocket, Wheel } from './wheels.tsx';

const left: Point = [48, 110];
const right: Point = [272, 110];
const runY = 70;
const sag = 44;
const grouser = 11;

/** The top run between idler and sprocket, hanging, and its ends round the wheels. */
function TopRun(): JSX.Element {
  return (
    <g>
      <Wheel at={left} r={34} />
      <Sprocket at={right} r={36} />
      <path class={css.thick} d="M48 70A40 40 0 0 0 12 128M272 70A40 40 0 0 1 308 128" />
      <Shoes points={hanging(48, 272, runY, sag, 9)} up={1} tall={grouser} />
      <Label at={[48, 170]}>{words.idler}</Label>
      <Label at={[272, 170]}>{words.sprocket}</Label>
    </g>
  );
}

/** Lies on the outermost grousers. */
const edgeY = 66;

function Straightedge({
  y = edgeY,
  from = 40,
  to = 280,
}: {
  y?: number;
  from?: number;
  to?: number;
}): JSX.Element {
  return <rect class={css.open} x={from} y={y - 9} width={to - from} height={9} rx={1} />;
}

const lowestTip = runY + sag - grouser;
const plate = runY + sag - 5;

export const StraightedgeGrouser = (): JSX.Element => (
  <Drawing id="straightedge-grouser" height={180}>
    <TopRun />
    <Straightedge />
    <Label at={[160, 44]}>{words.straightedge}</Label>
    <Measure from={[160, edgeY]} to={[160, lowestTip]} label={words.toTip} at={[160, 138]} anchor="middle" />
  </Drawing>
);

export const StraightedgeShoe = (): JSX.Element => (
  <Drawing id="straightedge-shoe" height={180}>
    <TopRun />
    <Straightedge />
    <Label at={[160, 44]}>{words.straightedge}</Label>
    <Measure from={[173, edgeY]} to={[173, plate]} label={words.toPlate} at={[160, 138]} anchor="middle" />
  </Drawing>
);

export const StringOver = (): JSX.Element => (
  <Drawing id="string" height={180}>
    <TopRun />
    <path class={css.faint} d={`M18 ${edgeY - 3}H302`} />
    <circle class={css.solid} cx={18} cy={edgeY - 3} r={3} />
    <circle class={css.solid} cx={302} cy={edgeY - 3} r={3} />
    <Label at={[160, 48]}>{words.string}</Label>
    <Measure
      from={[160, edgeY - 3]}
      to={[160, lowestTip]}
      label={words.sag}
      at={[160, 138]}
      anchor="middle"
    />
  </Drawing>
);

export const Deflection = (): JSX.Element => (
  <Drawing id="deflection" height={180}>
    <TopRun />
    <Straightedge />
    <Arrow from={[146, 12]} to={[146, 100]} />
    <Label at={[136, 28]} anchor="end" mark>
      {words.load}
    </Label>
    <Measure
      from={[186, edgeY]}
      to={[186, lowestTip - 3]}
      label={words.read}
      at={[160, 138]}
      anchor="middle"
    />
  </Drawing>
);

export const StraightedgeSlide = (): JSX.Element => (
  <Drawing id="straightedge-slide" height={180}>
    <Wheel at={[56, 112]} r={40} />
    <path stroke-width={8} d="M56 68A44 44 0 0 0 14 124M250 68L316 76" />
    <RubberRun points={hanging(56, 250, 68, 36, 9)} up={1} />
    <rect class={css.body} x={222} y={73} width={56} height={14} />
    <path d="M232 87V128M268 87V128" />
    <Straightedge y={60} from={42} to={276} />
    <Label at={[160, 38]}>{words.straightedge}</Label>
    <Measure from={[153, 60]} to={[153, 94]} label={words.largestGap} at={[150, 136]} anchor="middle" />
    <Label at={[56, 172]}>{words.idler}</Label>
    <Label at={[262, 148]}>{words.slidePlate}</Label>
  </Drawing>
);

const rollers = [98, 150, 202].map((x): Point => [x, 92]);

/** A raised side: frame, wheels and rollers, with the lower run hanging free over the ground. */
function Raised({ children }: { children: JSX.Element }): JSX.Element {
  return (
    <g>
      <path class={css.thick} d="M46 26H254A36 36 0 0 1 290 70M46 26A36 36 0 0 0 10 70" />
      <Wheel at={[46, 66]} r={34} />
      <Sprocket at={[254, 66]} r={36} />
      <rect class={css.body} x={64} y={54} width={170} height={26} rx={3} />
      {rollers.map((at) => (
        <Wheel key={at[0]} at={at} r={12} hub={3} />
      ))}
      {children}
      <Ground y={196} />
      <Label at={[150, 72]}>{words.frame}</Label>
    </g>
  );
}

const lowerRun = hanging(20, 280, 96, 54, 11);

export const FrameToShoe = (): JSX.Element => (
  <Drawing id="frame-to-shoe" height={210}>
    <Raised>
      <Shoes points={lowerRun} up={-1} />
    </Raised>
    <Measure from={[124, 81]} to={[124, 145]} label={words.read} at={[132, 126]} />
    <Label at={[290, 184]} anchor="end">
      {words.shoe}
    </Label>
    <Leader from={[252, 178]} to={[226, 138]} />
  </Drawing>
);

export const FrameToTrack = (): JSX.Element => (
  <Drawing id="frame-to-track" height={210}>
    <Raised>
      <RubberRun points={lowerRun} up={-1} />
    </Raised>
    <Measure from={[124, 81]} to={[124, 144]} label={words.read} at={[132, 126]} />
    <Label at={[308, 184]} anchor="end">
      {words.rubber}
    </Label>
    <Leader from={[238, 174]} to={[222, 140]} />
  </Drawing>
);

export const RollerGap = (): JSX.Element => (
  <Drawing id="roller-gap" height={200}>
    <rect class={css.body} x={20} y={10} width={280} height={34} rx={3} />
    <Wheel at={[36, 76]} r={30} />
    <Wheel at={[160, 76]} r={38} hub={6} />
    <Wheel at={[284, 76]} r={30} />
    <RubberRun points={hanging(4, 316, 130, 12, 9)} up={-1} />
    <circle class={css.open} cx={160} cy={126} r={10} stroke-width={3} />
    <g class={css.mark}>
      <circle cx={160} cy={126} r={10} stroke-width={3} />
    </g>
    <Label at={[160, 32]}>{words.middleRoller}</Label>
    <Leader from={[160, 38]} to={[160, 56]} />
    <Leader from={[228, 170]} to={[168, 132]} />
    <Label at={[314, 183]} anchor="end">
      {words.dowel}
    </Label>
    <Cross at={[26, 178]} />
    <Label at={[42, 183]} anchor="start" mark>
      {words.noHand}
    </Label>
  </Drawing>
);

export const Retreat = (): JSX.Element => (
  <Drawing id="retreat" height={180}>
    <circle class={css.dashed} cx={78} cy={98} r={50} />
    <Wheel at={[112, 98]} r={50} />
    <rect class={css.open} x={112} y={88} width={110} height={20} rx={10} />
    <circle class={css.open} cx={112} cy={98} r={10} />
    <rect class={css.body} x={180} y={74} width={136} height={48} rx={3} />
    <Label at={[248, 103]}>{words.adjuster}</Label>
    <path class={css.dashed} d="M78 98V20" />
    <path
      d={path([
        [112, 86],
        [112, 20],
      ])}
    />
    <Measure from={[78, 24]} to={[112, 24]} label={words.retreat} at={[122, 28]} />
    <Leader from={[60, 164]} to={[42, 134]} />
    <Label at={[64, 172]} anchor="start">
      {words.mark}
    </Label>
  </Drawing>
);
