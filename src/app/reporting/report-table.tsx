import type { TableBlock } from '../../report/blocks.ts';
import styles from './reporting.module.css';

/** A table of so many rows stays on one page. */
const mostWhole = 12;

/** A table whose head is said again on each page; on a narrow screen it scrolls by itself, also by keys. */
export function ReportTable({ table }: { table: TableBlock }) {
  const { caption, head, figures, rows, blank } = table;
  const looks = [styles.tableBox, rows.length <= mostWhole && styles.whole, blank && styles.blank];
  const look = (column: number): string | undefined => (figures.includes(column) ? styles.figure : undefined);
  return (
    // oxlint-disable-next-line jsx-a11y/no-noninteractive-tabindex -- what scrolls must be reached by keys
    <div class={looks.filter(Boolean).join(' ')} role="group" aria-label={caption} tabIndex={0}>
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
