import type { orders as english } from '../../en/orders/index.ts';
import { kits } from './kits.ts';
import { list } from './list.ts';
import { shared } from './shared.ts';

export const orders: typeof english = { ...shared, list, kits };
