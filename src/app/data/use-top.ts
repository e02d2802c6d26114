import { useLayoutEffect, useRef } from 'preact/hooks';

/** Begins at the top when another panel takes the place of this one at the same address. */
export function useTop(panel: unknown): void {
  const shown = useRef(panel);
  useLayoutEffect(() => {
    if (shown.current !== panel) scrollTo(0, 0);
    shown.current = panel;
  }, [panel]);
}
