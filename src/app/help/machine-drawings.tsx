import type { JSX } from 'preact';
import { drawingLabels as words } from '../../words/en/drawings.ts';
import css from '../parts/drawing.module.css';
import { Arrow, Cross, Drawing, Ground, Label, Leader } from './drawing.tsx';
import { Sprocket, Wheel } from './wheels.tsx';

export const Front = (): JSX.Element => (
  <Drawing id="front" height={220}>
    <path class={css.body} d="M98 54H226V96H118Q98 96 98 76Z" />
    <path class={css.open} d="M190 18H226V54H190Z" />
    <path stroke-width={6} d="M226 60L272 22L306 64" />
    <path class={css.body} d="M294 64H316L312 86H300Z" />
    <rect class={css.body} x={140} y={96} width={44} height={18} />
    <rect x={36} y={114} width={250} height={72} rx={36} stroke-width={6} />
    <Wheel at={[74, 150]} r={28} />
    <Sprocket at={[248, 150]} r={29} />
    {[114, 146, 178, 210].map((x) => (
      <Wheel key={x} at={[x, 170]} r={10} hub={2.5} />
    ))}
    <Ground y={192} />
    <Arrow from={[66, 96]} to={[8, 96]} />
    <Label at={[4, 84]} anchor="start" mark>
      {words.front}
    </Label>
    <Label at={[74, 215]}>{words.idler}</Label>
    <Label at={[248, 215]}>{words.sprocket}</Label>
    <Label at={[160, 80]}>{words.houseSwung}</Label>
  </Drawing>
);

const timbers = [0, 1, 2, 3, 4] as const;

export const Blocked = (): JSX.Element => (
  <Drawing id="blocked" height={236}>
    <g transform="rotate(9 250 196)">
      <rect class={css.body} x={96} y={78} width={142} height={52} rx={4} />
      <rect class={css.open} x={104} y={86} width={42} height={28} />
      <rect class={css.body} x={120} y={130} width={98} height={18} />
      <rect class={css.open} x={84} y={130} width={40} height={64} rx={8} stroke-width={4} />
      <rect class={css.open} x={214} y={130} width={40} height={64} rx={8} stroke-width={4} />
    </g>
    <path stroke-width={6} d="M112 82L44 70L34 176" />
    <path class={css.body} d="M22 176H46L50 204H18Z" />
    {timbers.map((row) => (
      <rect
        key={row}
        class={css.solid}
        x={row % 2 === 0 ? 136 : 144}
        y={140 + row * 13}
        width={row % 2 === 0 ? 54 : 38}
        height={10.5}
        stroke="none"
      />
    ))}
    <path class={css.solid} d="M258 204H286L258 184Z" />
    <Ground y={206} />
    <Label at={[162, 231]}>{words.blocks}</Label>
    <Label at={[276, 231]}>{words.chock}</Label>
    <Cross at={[16, 18]} />
    <Label at={[32, 23]} anchor="start" mark>
      {words.notHydraulics}
    </Label>
    <Leader from={[50, 30]} to={[56, 72]} />
  </Drawing>
);
