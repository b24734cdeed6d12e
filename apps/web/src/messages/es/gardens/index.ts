import type { gardens as english } from '../../en/gardens/index.ts';
import { clients } from './clients.ts';
import { day } from './day.ts';
import { kits } from './kits.ts';
import { line } from './line.ts';
import { orders } from './orders.ts';
import { planting } from './planting.ts';
import { promise } from './promise.ts';
import { pull } from './pull.ts';
import { shared } from './shared.ts';
import { why } from './why.ts';
import { whatIf } from './what-if.ts';

export const gardens: typeof english = {
  ...shared,
  orders,
  kits,
  line,
  day,
  promise,
  pull,
  planting,
  clients,
  why,
  whatIf,
};
