/** What was promised to whom: lines, days, checks, reasons and what if. */
import { check } from './check.ts';
import { day } from './day.ts';
import { line } from './line.ts';
import { marks } from './marks.ts';
import { plan } from './plan.ts';
import { whatIf } from './what-if.ts';
import { why } from './why.ts';

export const promises = { line, day, check, marks, why, whatIf, plan };
