/** The state of a long list as it stands in the page's address: search, filters, order, page. Back and sharing then work by themselves. */
export interface ListState {
  page: number;
  sort: string;
  descending: boolean;
  /** Every filter that is set, the search `q` among them. */
  filters: Readonly<Record<string, string>>;
}

export interface ListDefaults {
  sort: string;
  descending?: boolean;
  /** The names of the filters this list knows; anything else in the address is left alone. */
  filters: readonly string[];
}

type Search = Readonly<Record<string, unknown>>;

/** Addresses are typed by hand too: whatever is no page counts as the first. */
function pageOf(value: unknown): number {
  const page = Number(value);
  return Number.isInteger(page) && page >= 1 ? page : 1;
}

export function readList(search: Search, defaults: ListDefaults): ListState {
  const order = typeof search['sort'] === 'string' && search['sort'] !== '' ? search['sort'] : null;
  const filters: Record<string, string> = {};
  for (const name of defaults.filters) {
    const value = search[name];
    if (value !== undefined && value !== null && value !== '') filters[name] = String(value);
  }
  return {
    page: pageOf(search['page']),
    sort: order ? order.replace(/^-/, '') : defaults.sort,
    descending: order ? order.startsWith('-') : (defaults.descending ?? false),
    filters,
  };
}

/** The address's search for a changed list; what is as by default is left out. Any change but the page's goes back to the first page. */
export function writeList(search: Search, defaults: ListDefaults, change: Partial<ListState>): Record<string, unknown> {
  const before = readList(search, defaults);
  const after = { ...before, page: 1, ...change };
  const next: Record<string, unknown> = { ...search };
  for (const name of [...defaults.filters, 'page', 'sort']) delete next[name];
  for (const [name, value] of Object.entries(after.filters)) if (value !== '') next[name] = value;
  if (after.page > 1) next['page'] = after.page;
  if (after.sort !== defaults.sort || after.descending !== (defaults.descending ?? false))
    next['sort'] = `${after.descending ? '-' : ''}${after.sort}`;
  return next;
}
