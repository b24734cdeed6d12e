/**
 * DataTable: rows of the server's page. Under 640 px each row becomes a card: the `title` column its head, the others
 * label and value (the roles are spelled out because restyled tables lose theirs). Sorting and paging are the
 * server's: the table only says what was asked for. A selection shows the bulk bar, which stays in sight.
 */
import { useId, type ReactNode } from 'react';
import { useMessages } from '../../messages/index.ts';
import { BulkBar } from './bulk-bar.tsx';
import type { Column, Selection, Sort } from './column.ts';
import { SortHeader, SortSelect } from './sorting.tsx';
import './data-table.css';

export interface DataTableProps<Row> {
  /** Read out, and shown above the table unless `quietCaption`. */
  caption: string;
  quietCaption?: boolean;
  rows: readonly Row[];
  rowId: (row: Row) => string;
  /** What a row is called in "Select …". */
  rowName: (row: Row) => string;
  columns: readonly Column<Row>[];
  sort?: Sort;
  onSort?: (sort: Sort) => void;
  selection?: Selection;
  /** Shown instead of the table when there are no rows: an EmptyState. */
  empty: ReactNode;
  /** The rows shown belong to the question before; they are dimmed until the answer comes. */
  stale?: boolean;
}

export function DataTable<Row>({
  caption,
  quietCaption = false,
  rows,
  rowId,
  rowName,
  columns,
  sort,
  onSort,
  selection,
  empty,
  stale = false,
}: DataTableProps<Row>) {
  const { ui } = useMessages();
  const captionId = useId();
  if (rows.length === 0) return <>{empty}</>;
  const toggle = (ids: readonly string[], on: boolean) => {
    if (!selection) return;
    const next = new Set(selection.ids);
    for (const id of ids) {
      if (on) next.add(id);
      else next.delete(id);
    }
    selection.onChange(next);
  };
  const pageIds = rows.map(rowId);
  const allOnPage = selection !== undefined && pageIds.every((id) => selection.ids.has(id));

  return (
    <div className="table-frame" data-stale={stale || undefined} aria-busy={stale || undefined}>
      {onSort && <SortSelect columns={columns} sort={sort} onSort={onSort} />}
      {selection && (
        <label className="choice table-select-page">
          <input
            type="checkbox"
            className="choice-mark"
            checked={allOnPage}
            onChange={(event) => toggle(pageIds, event.target.checked)}
          />
          {ui.selectPage}
        </label>
      )}
      <table className="table" role="table" aria-labelledby={captionId}>
        <caption id={captionId} className={quietCaption ? 'only-heard' : undefined}>
          {caption}
        </caption>
        <thead role="rowgroup">
          <tr role="row">
            {selection && (
              <th role="columnheader" scope="col" className="table-check">
                <label className="table-check-target">
                  <span className="only-heard">{ui.selectPage}</span>
                  <input
                    type="checkbox"
                    className="choice-mark"
                    checked={allOnPage}
                    onChange={(event) => toggle(pageIds, event.target.checked)}
                  />
                </label>
              </th>
            )}
            {columns.map((column) => (
              <SortHeader key={column.key} column={column} sort={sort} onSort={onSort} />
            ))}
          </tr>
        </thead>
        <tbody role="rowgroup">
          {rows.map((row) => {
            const id = rowId(row);
            const chosen = selection?.ids.has(id) ?? false;
            return (
              <tr key={id} role="row" className="table-row" data-chosen={chosen || undefined}>
                {selection && (
                  <td role="cell" className="table-check">
                    <label className="table-check-target">
                      <span className="only-heard">{ui.selectRow(rowName(row))}</span>
                      <input
                        type="checkbox"
                        className="choice-mark"
                        checked={chosen}
                        onChange={(event) => toggle([id], event.target.checked)}
                      />
                    </label>
                  </td>
                )}
                {columns.map((column) => (
                  <td
                    key={column.key}
                    role="cell"
                    className={`table-cell${column.figure ? ' table-figure' : ''}${column.title ? ' table-title' : ''}${column.wideOnly ? ' table-wide' : ''}`}
                  >
                    {!column.title && <span className="table-label">{column.header}</span>}
                    <div className="table-value">{column.cell(row)}</div>
                  </td>
                ))}
              </tr>
            );
          })}
        </tbody>
      </table>
      {selection && selection.ids.size > 0 && <BulkBar selection={selection} />}
    </div>
  );
}
