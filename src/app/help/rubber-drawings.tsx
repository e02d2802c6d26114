import type { JSX } from 'preact';
import { drawingLabels as words } from '../../words/en/drawings.ts';
import css from '../parts/drawing.module.css';
import { Drawing, Label, Leader, Measure } from './drawing.tsx';

export const LugDepth = (): JSX.Element => (
  <Drawing id="lug-depth" height={190}>
    <path class={css.body} d="M4 176V126H24L36 76H104L116 126H240L252 84H316V176Z" />
    <path class={css.dashed} d="M4 152H316" />
    <path class={css.open} d="M54 62H190V74H166V124H158V74H54Z" />
    <Measure from={[136, 76]} to={[136, 126]} label={words.depth} at={[176, 106]} />
    <Label at={[70, 108]}>{words.lug}</Label>
    <Leader from={[248, 46]} to={[226, 126]} />
    <Label at={[316, 40]} anchor="end">
      {words.lowest}
    </Label>
  </Drawing>
);

export const Crack = (): JSX.Element => (
  <Drawing id="crack" height={200}>
    <rect class={css.body} x={6} y={30} width={308} height={58} rx={3} />
    <path stroke-width={3.5} d="M72 62L98 54L130 66L166 52L206 64L242 56" />
    <Measure from={[72, 78]} to={[242, 78]} label={words.length} at={[252, 83]} />
    <Label at={[6, 20]} anchor="start">
      {words.above}
    </Label>
    <path class={css.body} d="M6 128H146L156 164L166 128H314V192H6Z" />
    <path class={css.dashed} stroke-width={3} d="M6 178H314" />
    <Measure from={[184, 128]} to={[184, 164]} label={words.depth} at={[194, 152]} />
    <Label at={[6, 119]} anchor="start">
      {words.section}
    </Label>
    <Leader from={[84, 154]} to={[96, 178]} />
    <Label at={[66, 156]}>{words.cord}</Label>
  </Drawing>
);

const strands = [0, 1, 2, 3, 4, 5] as const;

/** A band of six cords in its rubber; `cut` of them are parted at the middle. */
function Band(props: { x: number; y: number; cut: number; label: string }): JSX.Element {
  const { x, y, cut, label } = props;
  return (
    <g>
      <rect class={css.body} x={x} y={y} width={148} height={66} rx={3} />
      <path
        class={css.open}
        d={`M${x + 34} ${y + 5}L${x + 108} ${y + 3}L${x + 118} ${y + 60}L${x + 28} ${y + 62}Z`}
      />
      {strands.map((i) => {
        const at = y + 12 + i * 8.4;
        return i < cut ? (
          <path key={i} d={`M${x + 30} ${at}H${x + 62}l5 -3M${x + 116} ${at}H${x + 84}l-5 3`} />
        ) : (
          <path key={i} d={`M${x + 30} ${at}H${x + 116}`} />
        );
      })}
      <Label at={[x + 74, y + 84]}>{label}</Label>
    </g>
  );
}

export const CordStates = (): JSX.Element => (
  <Drawing id="cord" height={202}>
    <Band x={6} y={4} cut={0} label={words.showing} />
    <Band x={166} y={4} cut={1} label={words.strandsCut} />
    <Band x={6} y={106} cut={3} label={words.halfCut} />
    <Band x={166} y={106} cut={6} label={words.parted} />
  </Drawing>
);

const cordsAt = [46, 60, 74, 246, 260, 274] as const;

export const TrackNames = (): JSX.Element => (
  <Drawing id="track-names" height={220}>
    <path
      class={css.body}
      d="M20 100H112L122 44H144L150 100H170L176 44H198L208 100H300V140H284L276 176H190L184 140H136L130 176H44L36 140H20Z"
    />
    <path
      class={css.solid}
      d="M78 112H128L134 62H138L144 112H176L182 62H186L192 112H242V128H78Z"
      opacity={0.55}
    />
    {cordsAt.map((x) => (
      <circle key={x} class={css.solid} cx={x} cy={134} r={4} stroke="none" />
    ))}
    <Label at={[160, 20]}>{words.horns}</Label>
    <Leader from={[146, 26]} to={[134, 48]} />
    <Leader from={[174, 26]} to={[186, 48]} />
    <Label at={[64, 74]}>{words.path}</Label>
    <Leader from={[64, 80]} to={[74, 99]} />
    <Leader from={[248, 80]} to={[228, 112]} />
    <Label at={[262, 74]}>{words.core}</Label>
    <Label at={[86, 164]}>{words.lug}</Label>
    <Leader from={[160, 188]} to={[74, 134]} />
    <Leader from={[160, 188]} to={[246, 134]} />
    <Label at={[160, 206]}>{words.cords}</Label>
  </Drawing>
);

export const DriveLugs = (): JSX.Element => (
  <Drawing id="drive-lugs" height={190}>
    <path class={css.open} d="M96 4H224L200 40L178 104H142L120 40Z" />
    <Label at={[160, 34]}>{words.tooth}</Label>
    <path class={css.body} d="M4 124H26L34 70H72L80 124H184L190 70H230L238 124H316V152H4Z" />
    <path class={css.body} d="M30 152L36 178H92L98 152M150 152L156 178H212L218 152M270 152L276 178H316V152" />
    <g class={css.mark} stroke-width={5}>
      <path d="M185 118L189 74" />
    </g>
    <Label at={[52, 58]}>{words.driveLug}</Label>
    <Leader from={[268, 44]} to={[188, 92]} />
    <Label at={[316, 38]} anchor="end" mark>
      {words.face}
    </Label>
  </Drawing>
);
