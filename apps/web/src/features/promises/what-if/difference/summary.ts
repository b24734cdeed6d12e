/** How the lines of others would fare, in one sentence; empty where nobody else would fare otherwise. */
import type { promises } from '@rootclock/contracts';
import type { Messages } from '../../../../messages/index.ts';

export function summaryOf({ summary }: Messages['promises']['whatIf'], others: readonly promises.WhatIfLine[]): string {
  const losing = others.filter(({ shorterBy }) => shorterBy > 0);
  const gaining = others.filter(({ filledNow, filledThen }) => filledThen > filledNow);
  const moving = others.filter(({ filledNow, filledThen }) => filledThen === filledNow);
  return summary(
    losing.length,
    losing.reduce((sum, { shorterBy }) => sum + shorterBy, 0),
    gaining.length,
    gaining.reduce((sum, { filledNow, filledThen }) => sum + filledThen - filledNow, 0),
    moving.length,
  );
}

export const isTouched = (line: promises.WhatIfLine) =>
  line.filledNow !== line.filledThen || line.givesUp.length > 0 || line.takes.length > 0;
