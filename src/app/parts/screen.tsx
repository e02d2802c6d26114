import type { ComponentChildren } from 'preact';
import { useEffect, useRef } from 'preact/hooks';
import { common } from '../../words/en/common.ts';
import { NoticeBar } from './notice-bar.tsx';
import { StorageBanner } from './storage-banner.tsx';
import styles from './parts.module.css';

interface ScreenProps {
  readonly title: string;
  readonly sub?: ComponentChildren;
  /** The actions within reach of the thumb; the main one last. */
  readonly bar?: ComponentChildren;
  readonly wide?: boolean;
  readonly children: ComponentChildren;
}

/** A screen: title, content, and its actions at the bottom. */
export function Screen({ title, sub, bar, wide, children }: ScreenProps) {
  const heading = useRef<HTMLHeadingElement>(null);
  const content = useRef<HTMLElement>(null);
  useEffect(() => {
    document.title = `${title} · Sagline`;
    // A pad inside has taken the focus by now, so that a caliper can type at once.
    if (!content.current?.contains(document.activeElement)) heading.current?.focus({ preventScroll: true });
  }, [title]);
  return (
    <div class={`${styles.screen} ${wide ? styles.wide : ''}`}>
      <a class={styles.skip} href="#content">
        {common.skipToContent}
      </a>
      <header class={styles.head}>
        <h1 ref={heading} tabIndex={-1}>
          {title}
        </h1>
        {sub !== undefined && <div class={styles.sub}>{sub}</div>}
      </header>
      <StorageBanner />
      <NoticeBar />
      <main id="content" ref={content} class={styles.list}>
        {children}
      </main>
      {bar !== undefined && (
        <nav class={styles.bar}>
          <div class={styles.barIn}>{bar}</div>
        </nav>
      )}
    </div>
  );
}

/** A part of a screen under its own heading. */
export function Section({ title, children }: { title: string; children: ComponentChildren }) {
  return (
    <section class={styles.section}>
      {title !== '' && <h2>{title}</h2>}
      {children}
    </section>
  );
}
