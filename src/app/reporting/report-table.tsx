import type { TableBlock } from '../../report/blocks.ts';
import styles from './reporting.module.css';

/** A table whose head is said again on each page; on a narrow screen it scrolls by itself, also by keys. */
export function ReportTable({ table: { caption, head, figures, rows } }: { table: TableBlock }) {
  const look = (column: number): string | undefined => (figures.includes(column) ? styles.figure : undefined);
  return (
    // oxlint-disable-next-line jsx-a11y/no-noninteractive-tabindex -- what scrolls must be reached by keys
    <div class={styles.tableBox} role="region" aria-label={caption} tabIndex={0}>
      <table>
        <caption>{caption}</caption>
        <thead>
          <tr>
            {head.map((text, column) => (
              <th key={column} scope="col" class={look(column)}>
                {text}
              </th>
            ))}
          </tr>
        </thead>
        <tbody>
          {rows.map(([name = '', ...cells], row) => (
            <tr key={row}>
              <th scope="row">{name}</th>
              {cells.map((cell, at) => (
                <td key={at} class={look(at + 1)}>
                  {cell}
                </td>
              ))}
            </tr>
          ))}
        </tbody>
      </table>
    </div>
  );
}
