import { actions, page, story } from './page.ts';
import { bulk, sheets, treat } from './sheets.ts';
import * as words from './words.ts';

export const lots = { actions, bulk, page, sheets, story, treat, words };
