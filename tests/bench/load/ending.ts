// How lots end: planted for an order, sold, given away or lost; or that they stand today, some held, some pulled for an order.
import type { Family } from './family.ts';
import { stagedFor } from './ledger.ts';
import { type Lot, part, standing, whole } from './lots.ts';
import type { Orders } from './orders.ts';

/** A hold of a living lot. */
export interface Held {
  lotId: string;
  entryId: string;
  day: number;
}

/** About how many movements an end takes for each lot. */
export const LAST_MOVES = 2;

export function end(family: Family, orders: Orders): void {
  const { chance, plan } = family;
  family.day = Math.max(family.day, plan.endDay - 4);
  const how = chance.share();
  if (how < 0.45) plantOut(family, orders);
  else if (how < 0.7) for (const lot of family.lots) goTo(family, [lot], 'sell', 'sellFromLot', 'sold');
  else if (how < 0.8) for (const lot of family.lots) goTo(family, [lot], 'give', 'giveFromLot', 'given');
  else goTo(family, family.lots, 'lose', 'loseMany', 'lost');
  for (const lot of family.lots) lot.closedDay = family.day;
}

function goTo(
  family: Family,
  lots: Lot[],
  kind: 'sell' | 'give' | 'lose',
  command: string,
  name: 'sold' | 'given' | 'lost',
): void {
  const moves = lots.flatMap((lot) => standing(lot).map((from) => whole(from, family.ledger.outside(name))));
  family.book(kind, command, moves, kind === 'lose' ? { cause: 'weather' } : {});
}

/** Pulled for an order and planted the day after; sometimes a few come back, and do not live. */
function plantOut(family: Family, orders: Orders): void {
  const { chance, ledger } = family;
  const asked = family.lots.map((lot) => ({
    plantId: family.plant.id,
    containerId: lot.containerId,
    units: standing(lot).reduce((sum, { units }) => sum + units, 0),
  }));
  const lines = orders.pulled(chance, family.day, asked, 'done');
  const staged = family.lots.map((lot, nth) => stage(lot, lines[nth] ?? ''));
  family.book(
    'pull',
    'pullForOrder',
    family.lots.flatMap((lot, nth) => standing(lot).map((from) => whole(from, staged[nth]!))),
  );
  family.pass(1);
  const back = chance.share() < 0.1 ? 1 : 0;
  family.book(
    'plant',
    'plantOrder',
    staged.map((from) => part(from.units - back, from, ledger.outside('planted'))),
  );
  if (back === 0) return;
  family.book(
    'return',
    'returnFromOrder',
    family.lots.map((lot, nth) => part(back, staged[nth]!, family.at(lot, family.place()))),
  );
  family.pass(1);
  goTo(family, family.lots, 'lose', 'loseMany', 'lost');
}

function stage(lot: Lot, lineId: string) {
  const account = stagedFor(lot.id, lineId);
  lot.accounts.set(lineId, account);
  return account;
}

/** Answers the holds. */
export function stay(family: Family, orders: Orders): Held[] {
  const { chance, plan } = family;
  family.day = plan.endDay;
  for (const lot of family.lots) {
    const [from] = standing(lot);
    if (!from || from.units < 20 || chance.share() >= 0.01) continue;
    const [lineId = ''] = orders.pulled(
      chance,
      family.day,
      [{ plantId: family.plant.id, containerId: lot.containerId, units: 10 }],
      'open',
    );
    family.book('pull', 'pullForOrder', [part(10, from, stage(lot, lineId))]);
  }
  const held = family.lots.filter(() => chance.share() < 0.03);
  return held.map((lot) => ({
    lotId: lot.id,
    day: family.day,
    entryId: family.book('hold', 'holdMany', [], { subjects: [{ kind: 'lot', id: lot.id }] }),
  }));
}
