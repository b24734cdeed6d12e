import type { Messages } from '../en/index.ts';
import { board } from './pot-life/board.ts';
import { clients } from './clients.ts';
import { door } from './settings/door.ts';
import { errors } from './errors/index.ts';
import { files } from './files.ts';
import { gardens } from './gardens/index.ts';
import { issues } from './issues.ts';
import { losses } from './pot-life/losses.ts';
import { lots } from './lots/index.ts';
import { orders } from './orders/index.ts';
import { outbox } from './outbox.ts';
import { people } from './people.ts';
import { plants } from './plants/index.ts';
import { propagation } from './propagation/index.ts';
import { promises } from './promises/index.ts';
import { record } from './record.ts';
import { rules } from './settings/rules.ts';
import { settings } from './settings/settings.ts';
import { substitutes } from './settings/substitutes.ts';
import { shell } from './shell.ts';
import { seed } from './sources/seed.ts';
import { sources } from './sources/index.ts';
import { stockIn } from './stock-in/index.ts';
import { planning } from './planning/index.ts';
import { tasks } from './planning/tasks.ts';
import { today } from './pot-life/today.ts';
import { ui } from './ui.ts';
import { winter } from './winter.ts';

export const messages: Messages = {
  board,
  clients,
  door,
  errors,
  files,
  gardens,
  issues,
  losses,
  lots,
  orders,
  outbox,
  people,
  planning,
  plants,
  promises,
  propagation,
  record,
  rules,
  seed,
  settings,
  shell,
  sources,
  stockIn,
  substitutes,
  tasks,
  today,
  ui,
  winter,
};
