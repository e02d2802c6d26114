/** Gloves bounce: a click this soon after another one, on the same control or at the same place, is its echo. */
const echoMs = 400;
const reachPx = 24;

const controls = 'a,button,summary,[role=button]';

interface Tap {
  readonly control: Element;
  readonly at: number;
  readonly x: number;
  readonly y: number;
}

/** Keys that are meant to be tapped fast: digits, counters. */
const isQuick = (control: Element): boolean => control.closest('[data-quick]') !== null;

function isEcho(now: Tap, last: Tap): boolean {
  if (now.at - last.at > echoMs) return false;
  if (now.control === last.control) return !isQuick(now.control);
  // Another control has come to stand where the finger still is: the screen changed under it.
  const isHere = Math.hypot(now.x - last.x, now.y - last.y) < reachPx;
  return isHere && !(isQuick(now.control) && isQuick(last.control));
}

/**
 * Takes the echoes of taps away before any control hears them, so that one tap has one effect even where it has
 * brought another screen.
 */
export function silenceEchoes(page: Document): void {
  let last: Tap | undefined;
  page.addEventListener(
    'click',
    (event) => {
      const { target, timeStamp: at, detail, clientX, clientY } = event;
      const control = target instanceof Element ? target.closest(controls) : null;
      if (control === null) return;
      // A click that a key makes has no place.
      const [x, y] = detail === 0 ? [NaN, NaN] : [clientX, clientY];
      const now = { control, at, x, y };
      if (last !== undefined && isEcho(now, last)) {
        event.stopImmediatePropagation();
        event.preventDefault();
        return;
      }
      last = now;
    },
    true,
  );
}
