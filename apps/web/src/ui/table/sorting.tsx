/** The two ways to ask for an order: a button in the column's head, and on a phone, where heads are gone, a list above the cards. */
import { useMessages } from '../../messages/index.ts';
import type { Column, Sort } from './column.ts';
import './sorting.css';

interface SortProps {
  sort: Sort | undefined;
  onSort: ((sort: Sort) => void) | undefined;
}

export function SortHeader<Row>({ column, sort, onSort }: SortProps & { column: Column<Row> }) {
  const here = sort?.key === column.key;
  const order = here ? (sort.descending ? 'descending' : 'ascending') : undefined;
  return (
    <th role="columnheader" scope="col" aria-sort={order} className={column.figure ? 'table-figure' : undefined}>
      {column.sortable && onSort ? (
        <button
          type="button"
          className="sort-button"
          onClick={() => onSort({ key: column.key, descending: here ? !sort.descending : false })}
        >
          {column.header}
          <span className="sort-mark" data-order={order ?? 'none'} aria-hidden="true" />
        </button>
      ) : (
        column.header
      )}
    </th>
  );
}

export function SortSelect<Row>({
  columns,
  sort,
  onSort,
}: {
  columns: readonly Column<Row>[];
  sort: Sort | undefined;
  onSort: (sort: Sort) => void;
}) {
  const { ui } = useMessages();
  const sortable = columns.filter((column) => column.sortable);
  if (sortable.length === 0) return null;
  return (
    <div className="sort-select">
      <label className="sort-label">
        {ui.sortBy}
        <select
          className="field-box"
          value={sort?.key ?? ''}
          onChange={(event) => onSort({ key: event.target.value, descending: sort?.descending ?? false })}
        >
          {!sort && <option value="">{ui.choose}</option>}
          {sortable.map((column) => (
            <option key={column.key} value={column.key}>
              {column.header}
            </option>
          ))}
        </select>
      </label>
      {sort && (
        <button
          type="button"
          className="button"
          aria-label={ui.turnOrder(!sort.descending)}
          onClick={() => onSort({ ...sort, descending: !sort.descending })}
        >
          <span className="sort-mark" data-order={sort.descending ? 'descending' : 'ascending'} aria-hidden="true" />
        </button>
      )}
    </div>
  );
}
