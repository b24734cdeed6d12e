// How lots come about: potted from a batch, bought, or on hand when the books began.
import { type Account, batchAt } from './ledger.ts';
import type { Family } from './family.ts';
import { part } from './lots.ts';

/** A batch that lots were potted from. */
export interface Batch {
  id: string;
  createdEntryId: string;
  startedDay: number;
  emergedDay: number;
  emergedUnits: number;
  unexplainedUnits: number;
  countEntryId: string;
  closedDay: number | null;
  accounts: Account[];
}

/** Days from sowing to the last potting; who has fewer days left buys plants instead. */
const BATCH_DAYS = 150;

export function begin(family: Family, lots: number): Batch | null {
  const { chance, plan } = family;
  if (chance.share() < 0.7 && plan.endDay - plan.startDay > BATCH_DAYS + 30) return fromBatch(family, lots);
  const opening = chance.share() < 0.2;
  const entryId = chance.id();
  const moves = Array.from({ length: lots }, () => {
    const units = chance.whole(70, 240);
    return part(
      units,
      family.ledger.outside(opening ? 'opening' : 'bought'),
      family.at(family.addLot(entryId, opening ? 'opening' : 'bought', units), family.place()),
    );
  });
  family.book(opening ? 'opening' : 'receive', opening ? 'receiveOpening' : 'receiveBought', moves, {}, entryId);
  return null;
}

function fromBatch(family: Family, lots: number): Batch {
  const { chance, ledger, plan } = family;
  const id = chance.id();
  const at = batchAt(id, family.place());
  const entryId = family.book('start', 'startBatch', [part(lots * 250 + 40, ledger.outside('started'), at)]);
  const startedDay = family.day;
  family.pass(chance.whole(30, 90));
  const emergedDay = family.day;
  const unexplainedUnits = chance.whole(2, 40);
  const countEntryId = family.book('count', 'countBatch', [part(unexplainedUnits, at, ledger.outside('unexplained'))], {
    subjects: [{ kind: 'batch', id }],
  });
  const emergedUnits = at.units;
  family.pass(chance.whole(20, 40));
  for (let nth = 0; nth < lots; nth++) {
    const potEntryId = chance.id();
    const lot = family.addLot(potEntryId, null, 0);
    const cells = chance.whole(70, 240);
    // Some cells hold two seedlings, which are pricked apart.
    const doubled = chance.share() < 0.2 ? 2 : 0;
    family.book(
      'pot',
      'potBatch',
      [{ from: at, to: family.at(lot, family.place()), fromUnits: cells, toUnits: cells + doubled }],
      {},
      potEntryId,
    );
    ledger.descends(lot.id, id, 'batch');
    family.pass(chance.whole(0, 3));
  }
  // Of what lives on, some still stands in its cells.
  const open = plan.live && chance.share() < 0.15;
  if (at.units > 0 && !open)
    family.book('lose', 'loseFromBatch', [part(at.units, at, ledger.outside('lost'))], { cause: 'discarded' });
  return {
    id,
    createdEntryId: entryId,
    startedDay,
    emergedDay,
    emergedUnits,
    unexplainedUnits,
    countEntryId,
    closedDay: at.units === 0 ? family.day : null,
    accounts: [at],
  };
}
