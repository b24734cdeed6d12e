import type { Messages } from '../en/index.ts';
import { errors } from './errors/index.ts';
import { issues } from './issues.ts';
import { outbox } from './outbox.ts';
import { people } from './people.ts';
import { plants } from './plants.ts';
import { shell } from './shell.ts';
import { ui } from './ui.ts';

export const messages: Messages = { errors, issues, outbox, people, plants, shell, ui };
