import { useEffect, useState } from 'preact/hooks';
import type { Block } from '../../report/blocks.ts';
import type { QrPath } from '../../report/qr-path.ts';
import styles from './reporting.module.css';

/** A QR code, dark on white on every theme, since some readers cannot read it the other way round. */
export function QrCode({ code: { content, alt, caption } }: { code: Extract<Block, { kind: 'code' }> }) {
  const [drawn, setDrawn] = useState<QrPath>();
  useEffect(() => {
    let current = true;
    void import('../../report/qr-path.ts').then(({ qrPath }) => {
      if (current) setDrawn(qrPath(content));
    });
    return () => {
      current = false;
    };
  }, [content]);
  return (
    <figure class={styles.code}>
      {drawn && (
        <svg viewBox={`0 0 ${drawn.size} ${drawn.size}`} role="img" aria-label={alt}>
          <rect width={drawn.size} height={drawn.size} fill="#fff" />
          <path d={drawn.path} fill="#000" shape-rendering="crispEdges" />
        </svg>
      )}
      <figcaption>{caption}</figcaption>
    </figure>
  );
}
