import { errors } from './errors/index.ts';
import { issues } from './issues.ts';
import { outbox } from './outbox.ts';
import { people } from './people.ts';
import { plants } from './plants.ts';
import { shell } from './shell.ts';
import { ui } from './ui.ts';

export const messages = { errors, issues, outbox, people, plants, shell, ui };
export type Messages = typeof messages;
