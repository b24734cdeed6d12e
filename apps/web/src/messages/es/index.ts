import type { Messages } from '../en/index.ts';
import { ui } from './ui.ts';

export const messages: Messages = { ui };
