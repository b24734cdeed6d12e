export { DataTable, type Column, type DataTableProps, type Selection, type Sort } from './data-table.tsx';
export { FilterBar, type FilterBarProps } from './filter-bar.tsx';
export { Pager, type PagerProps } from './pager.tsx';
