import { blankClient } from './clients/commands/blank-client.ts';
import { listClients, readClient, readSite } from './clients/reads.ts';
import { cancelOrder } from './pulls/commands/cancel-order.ts';
import { handOver } from './pulls/commands/hand-over.ts';
import { issuePullList } from './pulls/commands/issue-pull-list.ts';
import { plantOrder } from './pulls/commands/plant-order.ts';
import { pullForOrder } from './pulls/commands/pull-for-order.ts';
import { returnFromOrder } from './pulls/commands/return-from-order.ts';
import { readPullList } from './pulls/read-pull-list.ts';
import { listToPull } from './pulls/reads.ts';

export const gardensOperations = {
  listClients,
  readClient,
  readSite,
  blankClient,
  cancelOrder,
  issuePullList,
  pullForOrder,
  plantOrder,
  handOver,
  returnFromOrder,
  readPullList,
  listToPull,
};
