export { useListSearch } from './use-list-search.ts';
