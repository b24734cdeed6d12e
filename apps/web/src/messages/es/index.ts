import type { Messages } from '../en/index.ts';
import { board } from './pot-life/board.ts';
import { errors } from './errors/index.ts';
import { gardens } from './gardens/index.ts';
import { issues } from './issues.ts';
import { lots } from './lots/index.ts';
import { outbox } from './outbox.ts';
import { people } from './people.ts';
import { plants } from './plants.ts';
import { propagation } from './propagation/index.ts';
import { rules } from './settings/rules.ts';
import { settings } from './settings/settings.ts';
import { shell } from './shell.ts';
import { sources } from './sources.ts';
import { stockIn } from './stock-in/index.ts';
import { today } from './pot-life/today.ts';
import { ui } from './ui.ts';

export const messages: Messages = { board, errors, gardens, issues, lots, outbox, people, plants, propagation, rules, settings, shell, sources, stockIn, today, ui };
