// Procedures under the names they had when gardens held clients, orders and promises too: entries that wait on a phone, and pages that
// were loaded before, still call them so.
import { clientsOperations } from './clients/operations.ts';
import { ordersOperations } from './orders/operations.ts';
import { promisesOperations } from './promises/operations.ts';

const { listOrders, readOrder, editLine, changeDay, checkKit } = promisesOperations;

export const onceOfGardens = {
  ...clientsOperations,
  ...ordersOperations,
  listOrders,
  readOrder,
  editLine,
  changeDay,
  checkKit,
};
