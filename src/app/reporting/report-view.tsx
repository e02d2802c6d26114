import type { ComponentChildren } from 'preact';
import type { Block, Report } from '../../report/blocks.ts';
import { CallMark } from '../parts/call-mark.tsx';
import { WearBar } from '../parts/wear-bar.tsx';
import { SignatureDrawing } from '../sealing/signature-drawing.tsx';
import { QrCode } from './qr-code.tsx';
import { ReportPhoto } from './report-photo.tsx';
import { ReportTable } from './report-table.tsx';
import { isEntry, partsOf, type Part } from './sections.ts';
import styles from './reporting.module.css';

/** A report as a page: headings, tables, lists and pictures, on screen and on paper. */
export function ReportView({ report }: { report: Report }) {
  return (
    <article class={styles.report} lang={report.lang}>
      {partsOf(report.blocks).map((part, at) => (
        <PartView key={at} part={part} />
      ))}
    </article>
  );
}

function PartView({ part }: { part: Part }) {
  const { title, level, blocks } = part;
  const views = (shown: readonly Block[]): ComponentChildren =>
    paired(shown).map((each, at) =>
      Array.isArray(each) ? (
        <div key={at} class={styles.pair}>
          {each.map((photo) => (
            <ReportPhoto key={photo.sha256} photo={photo} />
          ))}
        </div>
      ) : (
        <BlockView key={at} block={each} />
      ),
    );
  if (!isEntry(part)) {
    return (
      <>
        {title !== '' && (level === 2 ? <h2>{title}</h2> : <h3>{title}</h3>)}
        {views(blocks)}
      </>
    );
  }
  const isFacts = ({ kind }: Block): boolean => kind === 'facts';
  return (
    <section class={styles.entry}>
      <div class={styles.margin}>
        <h3>{title}</h3>
        {views(blocks.filter((block) => !isFacts(block)))}
      </div>
      <div>{views(blocks.filter(isFacts))}</div>
    </section>
  );
}

type Photo = Extract<Block, { kind: 'photo' }>;

/** Two pictures on their own are compared, and stand side by side. */
function paired(blocks: readonly Block[]): readonly (Block | Photo[])[] {
  const made: (Block | Photo[])[] = [];
  for (let at = 0; at < blocks.length; at++) {
    const [one, two] = [blocks[at], blocks[at + 1]];
    const isRun = blocks[at - 1]?.kind === 'photo' || blocks[at + 2]?.kind === 'photo';
    if (one?.kind === 'photo' && two?.kind === 'photo' && !isRun) {
      made.push([one, two]);
      at += 1;
    } else if (one) made.push(one);
  }
  return made;
}

const roles = { lead: 'lead', caution: 'caution', small: 'small' } as const;

function BlockView({ block }: { block: Block }) {
  switch (block.kind) {
    case 'heading':
      return null;
    case 'text':
      return <p class={block.role && styles[roles[block.role]]}>{block.text}</p>;
    case 'list':
      return (
        <ul class={styles.list}>
          {block.items.map((item, at) => (
            <li key={at}>{item}</li>
          ))}
        </ul>
      );
    case 'facts':
      return (
        <dl class={styles.facts}>
          {block.rows.map(([name, value], at) => (
            <div key={at}>
              <dt>{name}</dt>
              <dd>{value}</dd>
            </div>
          ))}
        </dl>
      );
    case 'table':
      return <ReportTable table={block} />;
    case 'call':
      return (
        <div class={styles.call}>
          <CallMark call={block.call} />
          {block.text !== '' && <span>{block.text}</span>}
        </div>
      );
    case 'bar':
      return (
        <div class={styles.bar}>
          <WearBar percent={block.percent} expanded={block.expanded ?? 0} label={block.text} />
          <span aria-hidden="true">{block.text}</span>
        </div>
      );
    case 'photo':
      return <ReportPhoto photo={block} />;
    case 'signature':
      return <Signature block={block} />;
    case 'code':
      return <QrCode code={block} />;
  }
}

function Signature({ block }: { block: Extract<Block, { kind: 'signature' }> }) {
  const { name, role, strokes, alt } = block;
  return (
    <figure class={styles.signature}>
      {strokes.length > 0 ? (
        <SignatureDrawing strokes={strokes} label={alt} />
      ) : (
        <div class={styles.line} role="img" aria-label={alt} />
      )}
      <figcaption>{[name, role].filter(Boolean).join(', ')}</figcaption>
    </figure>
  );
}
