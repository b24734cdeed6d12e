import { addClient } from './clients/commands/add-client.ts';
import { blankClient } from './clients/commands/blank-client.ts';
import { editClient } from './clients/commands/edit-client.ts';
import { listClients, readClient } from './clients/reads.ts';
import { checkKit } from './kits/check-kit.ts';
import { addKit } from './kits/commands/add-kit.ts';
import { addKitLines } from './kits/commands/add-kit-lines.ts';
import { editKit } from './kits/commands/edit-kit.ts';
import { retireKit } from './kits/commands/retire-kit.ts';
import { listKits } from './kits/list-kits.ts';
import { addLine } from './orders/commands/add-line.ts';
import { addOrder } from './orders/commands/add-order.ts';
import { cancelOrder } from './orders/commands/cancel-order.ts';
import { changeDay } from './orders/commands/change-day.ts';
import { editLine } from './orders/commands/edit-line.ts';
import { editOrder } from './orders/commands/edit-order.ts';
import { finishOrder } from './orders/commands/finish-order.ts';
import { withdrawLine } from './orders/commands/withdraw-line.ts';
import { listOrders } from './orders/list-orders.ts';
import { readOrder } from './orders/page/read-order.ts';
import { handOver } from './pulls/commands/hand-over.ts';
import { issuePullList } from './pulls/commands/issue-pull-list.ts';
import { plantOrder } from './pulls/commands/plant-order.ts';
import { pullForOrder } from './pulls/commands/pull-for-order.ts';
import { returnFromOrder } from './pulls/commands/return-from-order.ts';
import { readPullList } from './pulls/read-pull-list.ts';
import { listToPull } from './pulls/reads.ts';
import { addBed } from './sites/commands/add-bed.ts';
import { addSite } from './sites/commands/add-site.ts';
import { editBed } from './sites/commands/edit-bed.ts';
import { editSite } from './sites/commands/edit-site.ts';
import { readSite } from './sites/reads.ts';
import { alternativesFor } from './substitutes/alternatives-for.ts';
import { addSubstitutionRule } from './substitutes/commands/add-substitution-rule.ts';
import { editSubstitutionRule } from './substitutes/commands/edit-substitution-rule.ts';
import { retireSubstitutionRule } from './substitutes/commands/retire-substitution-rule.ts';
import { listSubstitutionRules } from './substitutes/list-substitution-rules.ts';

export const gardensOperations = {
  addClient,
  editClient,
  blankClient,
  listClients,
  readClient,
  addSite,
  editSite,
  addBed,
  editBed,
  readSite,
  addOrder,
  editOrder,
  addLine,
  editLine,
  withdrawLine,
  changeDay,
  cancelOrder,
  finishOrder,
  listOrders,
  readOrder,
  issuePullList,
  readPullList,
  pullForOrder,
  plantOrder,
  handOver,
  returnFromOrder,
  listToPull,
  addSubstitutionRule,
  editSubstitutionRule,
  retireSubstitutionRule,
  listSubstitutionRules,
  alternativesFor,
  addKit,
  editKit,
  retireKit,
  addKitLines,
  listKits,
  checkKit,
};
