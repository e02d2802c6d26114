import type { JSX } from 'preact';
import type { Call } from '../../core/calls.ts';
import { callWords } from '../../words/en/calls.ts';
import { verdict } from '../../words/en/verdict.ts';
import styles from './parts.module.css';

/** Each call has a shape of its own, drawn in the ink of the text, so that colour never has to say it. */
const shapes: Record<Call | 'open', JSX.Element> = {
  run: <circle cx="12" cy="12" r="8" fill="none" stroke-width="2.5" />,
  recheck: <path d="M12 4a8 8 0 1 1-7.6 5.5M12 7.5V12l3.5 2" fill="none" stroke-width="2.5" />,
  adjust: <path d="M12 3l5 6H7zM12 21l5-6H7z" stroke-width="1" />,
  repair: <path d="M4 20V4h16v16zM4 20L20 4" fill="none" stroke-width="2.5" />,
  replace: <path d="M4 4h16v16H4z" stroke-width="1" />,
  park: <path d="M2 9h20v6H2zM8 3v18M16 3v18" stroke-width="3" />,
  open: (
    <path
      d="M12 3a9 9 0 0 1 0 18 9 9 0 0 1 0-18z"
      fill="none"
      stroke-width="2.5"
      stroke-dasharray="3.2 3.8"
    />
  ),
};

/** The call as its word and its shape. */
export function CallMark({ call, size = 22 }: { call: Call | 'open'; size?: number }) {
  return (
    <span class={styles.call}>
      <svg
        width={size}
        height={size}
        viewBox="0 0 24 24"
        aria-hidden="true"
        fill="currentColor"
        stroke="currentColor"
      >
        {shapes[call]}
      </svg>
      {call === 'open' ? verdict.openTitle : callWords[call].word}
    </span>
  );
}
