import type { ErrorSentences } from '../../errors.ts';
import { files } from './files.ts';
import { clients } from './clients.ts';
import { gardens } from './gardens.ts';
import { general } from './general.ts';
import { orders } from './orders.ts';
import { people } from './people.ts';
import { planning } from './planning.ts';
import { plants } from './plants.ts';
import { potLife } from './pot-life.ts';
import { promises } from './promises.ts';
import { propagation } from './propagation.ts';
import { sources } from './sources.ts';
import { stock } from './stock.ts';
import { stockIn } from './stock-in.ts';

/** One file a feature, as in the contracts; together they must cover every code. */
export const errors: ErrorSentences = {
  ...general,
  ...people,
  ...files,
  ...plants,
  ...potLife,
  ...sources,
  ...stock,
  ...stockIn,
  ...propagation,
  ...clients,
  ...orders,
  ...promises,
  ...gardens,
  ...planning,
};
