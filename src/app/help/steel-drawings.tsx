import type { JSX } from 'preact';
import { drawingLabels as words } from '../../words/en/drawings.ts';
import css from '../parts/drawing.module.css';
import { Cross, Drawing, Label, Leader, Measure, type Point } from './drawing.tsx';
import { Wheel } from './wheels.tsx';

const pins = [28, 94, 160, 226, 292] as const;

export const Pitch = (): JSX.Element => (
  <Drawing id="pitch" height={180}>
    {pins.slice(0, -1).map((x, i) => (
      <g key={x}>
        <rect class={css.body} x={x - 18} y={i % 2 === 0 ? 72 : 78} width={102} height={36} rx={18} />
        <Label at={[x + 33, 134]}>{words.link(i + 1)}</Label>
      </g>
    ))}
    {pins.map((x, i) => (
      <g key={x}>
        <circle class={css.open} cx={x} cy={93} r={13} />
        <Label at={[x, 98]}>{String(i + 1)}</Label>
      </g>
    ))}
    <path class={css.faint} d="M15 93V34M279 93V34" />
    <Measure from={[15, 40]} to={[279, 40]} label={words.fourLinks} at={[147, 30]} anchor="middle" />
    <Label at={[160, 166]} mark>
      {words.fivePins}
    </Label>
  </Drawing>
);

export const BushingOd = (): JSX.Element => (
  <Drawing id="bushing-od" height={210}>
    <path class={css.body} d="M104 50A68 68 0 1 1 104 160Q88 134 88 105Q88 76 104 50Z" />
    <circle class={css.dashed} cx={145} cy={105} r={68} />
    <circle class={css.open} cx={145} cy={105} r={36} />
    <path class={css.faint} d="M88 105V196M213 105V196M145 37H268M145 173H268" />
    <Measure from={[88, 190]} to={[213, 190]} label={words.one} at={[150, 206]} anchor="middle" />
    <Measure from={[260, 37]} to={[260, 173]} label={words.two} at={[268, 110]} />
    <Leader from={[50, 56]} to={[91, 90]} />
    <Label at={[4, 48]} anchor="start">
      {words.worn}
    </Label>
    <Label at={[316, 18]} anchor="end" mark>
      {words.smaller}
    </Label>
  </Drawing>
);

export const LinkHeight = (): JSX.Element => (
  <Drawing id="link-height" height={190}>
    <path class={css.body} d="M30 136V96Q30 56 70 56H250Q290 56 290 96V136Z" />
    <circle class={css.open} cx={74} cy={98} r={20} />
    <circle class={css.open} cx={246} cy={98} r={20} />
    <path class={css.solid} d="M8 136H312V146H296V180H284V146H8Z" />
    <path class={css.faint} d="M160 56H206M160 136H206" />
    <Measure from={[160, 56]} to={[160, 136]} label={words.linkHeight} at={[160, 38]} anchor="middle" />
    <Leader from={[276, 34]} to={[236, 56]} />
    <Label at={[280, 34]} anchor="start">
      {words.rail}
    </Label>
    <Leader from={[84, 172]} to={[96, 141]} />
    <Label at={[72, 178]} anchor="end">
      {words.shoe}
    </Label>
  </Drawing>
);

export const Grouser = (): JSX.Element => (
  <Drawing id="grouser" height={180}>
    <path class={css.body} d="M10 128V112Q20 70 58 62Q160 54 262 62Q300 70 310 112V128Z" />
    <rect class={css.solid} x={10} y={128} width={300} height={16} />
    <path class={css.dashed} d="M160 30V164" />
    <Label at={[160, 24]}>{words.centre}</Label>
    <Measure from={[172, 59]} to={[172, 127]} label={words.height} at={[182, 100]} />
    <Cross at={[28, 54]} />
    <Cross at={[292, 54]} />
    <Label at={[4, 36]} anchor="start" mark>
      {words.notHere}
    </Label>
    <Label at={[316, 36]} anchor="end" mark>
      {words.notHere}
    </Label>
    <Label at={[80, 172]}>{words.shoe}</Label>
  </Drawing>
);

const centre: Point = [150, 88];

export const RollerTread = (): JSX.Element => (
  <Drawing id="roller-tread" height={230}>
    <Wheel at={centre} r={68} hub={4} />
    <path class={css.body} d="M70 200V168Q70 156 84 156H216Q230 156 230 168V200Z" />
    <rect class={css.solid} x={30} y={200} width={240} height={9} />
    <path class={css.faint} d="M150 88H40M216 156H286" />
    <Measure from={[48, 88]} to={[48, 200]} label={words.b} at={[34, 150]} anchor="end" />
    <Measure from={[278, 156]} to={[278, 200]} label={words.c} at={[288, 184]} />
    <g class={css.dashed}>
      <Measure from={[150, 20]} to={[150, 156]} label={words.a} at={[160, 60]} />
    </g>
    <Label at={[150, 226]} mark>
      {words.formula}
    </Label>
    <Label at={[150, 186]}>{words.rail}</Label>
  </Drawing>
);

export const IdlerTread = (): JSX.Element => (
  <Drawing id="idler-tread" height={190}>
    <path class={css.body} d="M20 100H112L122 50H198L208 100H300V140H190V182H130V140H20Z" />
    <path class={css.faint} d="M60 50H122M198 50H260" />
    <Measure from={[70, 50]} to={[70, 100]} label={words.outer} at={[60, 80]} anchor="end" />
    <Measure from={[250, 50]} to={[250, 100]} label={words.inner} at={[260, 80]} />
    <Label at={[160, 40]}>{words.flange}</Label>
    <Label at={[70, 126]}>{words.tread}</Label>
    <Label at={[250, 126]}>{words.tread}</Label>
  </Drawing>
);
