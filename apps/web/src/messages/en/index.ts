import { errors } from './errors/index.ts';
import { issues } from './issues.ts';
import { outbox } from './outbox.ts';
import { people } from './people.ts';
import { plants } from './plants.ts';
import { propagation } from './propagation/index.ts';
import { shell } from './shell.ts';
import { sources } from './sources.ts';
import { stockIn } from './stock-in/index.ts';
import { ui } from './ui.ts';

export const messages = { errors, issues, outbox, people, plants, propagation, shell, sources, stockIn, ui };
export type Messages = typeof messages;
