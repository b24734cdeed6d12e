import { ui } from './ui.ts';

export const messages = { ui };
export type Messages = typeof messages;
