/** What a table is made of: its columns, the order asked for, and the rows selected. */
import type { ReactNode } from 'react';

export interface Column<Row> {
  key: string;
  header: string;
  cell: (row: Row) => ReactNode;
  /** Figures stand at the end of their column. */
  figure?: boolean;
  sortable?: boolean;
  /** The head of the card on a phone; holds the RowLink. */
  title?: boolean;
  /** Left out of the card, where it would only repeat. */
  wideOnly?: boolean;
}

export interface Sort {
  key: string;
  descending: boolean;
}

export interface Selection {
  ids: ReadonlySet<string>;
  onChange: (ids: ReadonlySet<string>) => void;
  /** The verbs for what is selected. */
  actions: (ids: readonly string[]) => ReactNode;
}
