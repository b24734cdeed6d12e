export type { Column, Selection, Sort } from './column.ts';
export { DataTable, type DataTableProps } from './data-table.tsx';
export { FilterBar, type FilterBarProps } from './filter-bar.tsx';
export { Pager, type PagerProps } from './pager.tsx';
