import { planState } from './allocation/plan-state.ts';
import { checkPromise } from './check/check-promise.ts';
import { explainLine } from './explain-line.ts';
import { setLossAside } from './losses/commands/set-loss-aside.ts';
import { listLosses } from './losses/reads.ts';
import { demandFor } from './offers/demand-for.ts';
import { offersFor } from './offers/offers-for.ts';
import { checkKit } from './orders/check-kit.ts';
import { changeDay } from './orders/commands/change-day.ts';
import { editLine } from './orders/commands/edit-line.ts';
import { listOrders } from './orders/list-orders.ts';
import { readOrder } from './orders/read-order.ts';
import { pinReservation } from './reservations/commands/pin-reservation.ts';
import { releaseReservation } from './reservations/commands/release-reservation.ts';
import { unpinReservation } from './reservations/commands/unpin-reservation.ts';
import { listShort } from './shortages-reads.ts';
import { whatIf } from './what-if/what-if.ts';

export const promisesOperations = {
  listOrders,
  readOrder,
  editLine,
  changeDay,
  checkKit,
  pinReservation,
  unpinReservation,
  releaseReservation,
  offersFor,
  demandFor,
  checkPromise,
  explainLine,
  whatIf,
  planState,
  listShort,
  listLosses,
  setLossAside,
};
