import type { JSX } from 'preact';
import { drawingLabels as words } from '../../words/en/drawings.ts';
import css from '../parts/drawing.module.css';
import { Cross, Drawing, Label, Leader, Measure } from './drawing.tsx';
import { Wheel } from './wheels.tsx';

export const AdjusterTravel = (): JSX.Element => (
  <Drawing id="adjuster-travel" height={180}>
    <Wheel at={[84, 90]} r={62} hub={0} />
    <rect class={css.open} x={28} y={72} width={196} height={36} rx={4} />
    <rect class={css.solid} x={66} y={76} width={36} height={28} rx={3} stroke="none" />
    <rect class={css.body} x={102} y={84} width={76} height={12} />
    <rect class={css.body} x={178} y={66} width={138} height={48} rx={4} />
    <Label at={[248, 95]}>{words.adjuster}</Label>
    <path class={css.faint} d="M28 108V166M66 104V166" />
    <Measure from={[28, 160]} to={[66, 160]} label={words.travel} at={[76, 165]} />
    <Label at={[84, 20]}>{words.idler}</Label>
  </Drawing>
);

const goodTooth =
  'M10 150H52Q70 150 76 120L84 70Q88 56 96 56Q104 56 108 70L116 120Q122 150 140 150H156V176H10Z';
const hookedTooth =
  'M166 150H188Q236 148 228 104Q222 82 204 70Q234 60 252 84Q266 104 266 124Q270 150 290 150H314V176H166Z';

export const SprocketTeeth = (): JSX.Element => (
  <Drawing id="sprocket-teeth" height={210}>
    <path class={css.body} d={goodTooth} />
    <path class={css.body} d={hookedTooth} />
    <g class={css.mark} stroke-width={5}>
      <path d="M44 150H52Q70 150 76 120L82 84" />
    </g>
    <Leader from={[40, 60]} to={[79, 102]} />
    <Label at={[4, 54]} anchor="start" mark>
      {words.driveFace}
    </Label>
    <Leader from={[28, 116]} to={[58, 147]} />
    <Label at={[4, 110]} anchor="start" mark>
      {words.root}
    </Label>
    <Cross at={[100, 34]} size={7} />
    <Label at={[114, 39]} anchor="start">
      {words.tip}
    </Label>
    <Label at={[90, 200]}>{words.good}</Label>
    <Label at={[240, 200]}>{words.hooked}</Label>
  </Drawing>
);
