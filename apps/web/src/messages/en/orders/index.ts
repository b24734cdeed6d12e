/** What clients ask for: orders, their lines and kits. */
import { kits } from './kits.ts';
import { list } from './list.ts';
import { shared } from './shared.ts';

export const orders = { ...shared, list, kits };
