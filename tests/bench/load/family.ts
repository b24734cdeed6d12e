// A few lots that began together, and what happens to them while they stand: moved, lost, counted, treated, sold from, potted up, put right.
import { type EntryKind, LOSS_CAUSES } from '@rootclock/domain';
import type { Chance } from '@rootclock/server/demo/random';
import type { Grounds } from './grounds.ts';
import { type Account, type Entry, type Ledger, lotAt, type Move } from './ledger.ts';
import { type Lot, type Observed, part, standing, whole } from './lots.ts';

export interface FamilyPlan {
  chance: Chance;
  startDay: number;
  /** The last day on which anything happens. */
  endDay: number;
  lots: number;
  /** About how many movements all of it makes. */
  moves: number;
  live: boolean;
}

/** Lots with fewer than these are left alone by losses, sales and dividing, so that a living lot stays worth looking at. */
const KEPT_UNITS = 30;
const MOST_PLACES = 6;
/** How often each thing happens, of all that happens. */
const SHARES: [keyof FamilyEvents, number][] = [
  ['moveAll', 0.36],
  ['movePart', 0.15],
  ['lose', 0.17],
  ['count', 0.12],
  ['look', 0.05],
  ['undo', 0.04],
  ['sell', 0.08],
  ['give', 0.03],
];
type FamilyEvents = Pick<Family, 'moveAll' | 'movePart' | 'lose' | 'count' | 'look' | 'undo' | 'sell' | 'give'>;

export class Family {
  readonly chance: Chance;
  readonly lots: Lot[] = [];
  readonly observed: Observed[] = [];
  readonly plant: Grounds['plants'][number];
  readonly containerId: string;
  readonly sourceId: string;
  day: number;
  /** Where its lots stand in turn. */
  private readonly places: string[];
  private made = 0;
  /** What may still be put right. */
  private last: Entry | null = null;

  constructor(
    readonly ledger: Ledger,
    readonly grounds: Grounds,
    readonly plan: FamilyPlan,
  ) {
    this.chance = plan.chance;
    this.day = plan.startDay;
    this.plant = this.chance.pick(grounds.plants);
    this.containerId = this.chance.pick(grounds.pots).id;
    this.places = Array.from({ length: MOST_PLACES }, () => this.chance.pick(grounds.benches));
    this.sourceId = this.chance.pick(grounds.sourcesOf(this.plant.id, plan.startDay));
  }

  /** Books an entry of today's; the day of a family only goes forward. */
  book(
    kind: EntryKind,
    command: string,
    moves: Move[],
    more: Pick<Entry, 'cause' | 'reversesId' | 'details' | 'subjects'> = {},
    id = this.chance.id(),
  ): string {
    const entry = { id, day: this.day, kind, command, moves, ...more };
    this.ledger.record(entry);
    this.made += moves.length;
    this.last = moves.length > 0 && (kind === 'move' || kind === 'lose' || kind === 'count') ? entry : null;
    return id;
  }

  pass(days: number): void {
    this.day = Math.min(this.plan.endDay, this.day + days);
  }

  addLot(createdEntryId: string, intake: Lot['intake'], receivedUnits: number, containerId = this.containerId): Lot {
    const lot: Lot = {
      id: this.chance.id(),
      containerId,
      createdEntryId,
      pottedDay: this.day,
      closedDay: null,
      intake,
      receivedUnits,
      accounts: new Map(),
    };
    this.lots.push(lot);
    return lot;
  }

  at(lot: Lot, placeId: string): Account {
    const account = lot.accounts.get(placeId) ?? lotAt(lot.id, placeId);
    lot.accounts.set(placeId, account);
    return account;
  }

  place(): string {
    return this.chance.pick(this.places);
  }

  /** Spends the movements planned for it over its days, and ends with every lot that was planned there. */
  live(lastMoves: number): void {
    const { moves, endDay, lots } = this.plan;
    const lastDay = endDay - 4;
    for (let idle = 0; this.made < moves - lastMoves && idle < 50;) {
      if (this.lots.length < lots && this.made >= moves / 2) this.potUp();
      const before = this.made;
      const events = Math.max(1, (moves - lastMoves - this.made) / 1.6);
      this.day = Math.min(
        lastDay,
        this.day + this.chance.whole(0, Math.max(0, Math.round((2 * (lastDay - this.day)) / events))),
      );
      this[this.event()]();
      idle = this.made > before ? 0 : idle + 1;
    }
    while (this.lots.length < lots) this.potUp();
  }

  private event(): keyof FamilyEvents {
    let left = this.chance.share();
    for (const [event, share] of SHARES) if ((left -= share) < 0) return event;
    return 'moveAll';
  }

  moveAll(): void {
    const to = this.place();
    const moves = this.lots.flatMap((lot) =>
      standing(lot)
        .filter(({ placeId }) => placeId !== to)
        .map((from) => whole(from, this.at(lot, to))),
    );
    if (moves.length > 0) this.book('move', 'moveMany', moves);
  }

  movePart(): void {
    const { lot, from } = this.largest();
    const to = this.place();
    if (to !== from.placeId && from.units > 8)
      this.book('move', 'moveLot', [part(Math.floor(from.units / 2), from, this.at(lot, to))]);
  }

  lose(): void {
    this.leave('lose', 'loseFromLot', 'lost', {
      cause: this.chance.pick(LOSS_CAUSES.filter((cause) => cause !== 'looks-dead')),
    });
  }

  sell(): void {
    this.leave('sell', 'sellFromLot', 'sold');
  }

  give(): void {
    this.leave('give', 'giveFromLot', 'given');
  }

  private leave(
    kind: EntryKind,
    command: string,
    to: 'lost' | 'sold' | 'given',
    more: Pick<Entry, 'cause'> = {},
  ): void {
    const { from } = this.largest();
    if (from.units > KEPT_UNITS)
      this.book(kind, command, [part(this.chance.whole(1, 2), from, this.ledger.outside(to))], more);
  }

  count(): void {
    const { lot, from } = this.largest();
    const off = this.chance.whole(-2, 2);
    const details = {
      placeId: from.placeId,
      expectedUnits: from.units,
      countedUnits: from.units + off,
      countKind: 'counted',
      before: { countKind: 'counted' },
    };
    const moves =
      off === 0
        ? []
        : [
            off > 0
              ? part(off, this.ledger.outside('found'), from)
              : part(-off, from, this.ledger.outside('unexplained')),
          ];
    if (from.units > KEPT_UNITS)
      this.book('count', 'countLot', moves, { details, subjects: [{ kind: 'lot', id: lot.id }] });
  }

  look(): void {
    const kind = this.chance.pick(['observe', 'treat'] as const);
    const id = this.book(kind, kind === 'observe' ? 'observeMany' : 'treatLots', [], {
      subjects: this.lots.map((lot) => ({ kind: 'lot', id: lot.id })),
    });
    this.observed.push({ id, kind, day: this.day });
  }

  /** The last thing was a slip. */
  undo(): void {
    const slip = this.last;
    if (!slip || slip.moves.some(({ to, toUnits }) => to.kind !== 'outside' && to.units < toUnits)) return;
    this.book(
      'reverse',
      'reverseEntry',
      slip.moves.map(({ from, to, fromUnits, toUnits }) => ({
        from: to,
        to: from,
        fromUnits: toUnits,
        toUnits: fromUnits,
      })),
      { reversesId: slip.id },
    );
  }

  /** Half of the largest lot goes into another pot, and is a lot of its own. */
  private potUp(): void {
    const { lot, from } = this.largest();
    const entryId = this.chance.id();
    const child = this.addLot(entryId, null, 0, this.chance.pick(this.grounds.pots).id);
    this.book(
      'pot-up',
      'potUpLot',
      [part(Math.max(1, Math.floor(from.units / 2)), from, this.at(child, this.place()))],
      {},
      entryId,
    );
    this.ledger.descends(child.id, lot.id, 'lot');
  }

  private largest(): { lot: Lot; from: Account } {
    const lot = this.chance.pick(this.lots);
    const from = standing(lot).reduce<Account | undefined>(
      (most, each) => (most && most.units >= each.units ? most : each),
      undefined,
    );
    if (!from) throw new Error('a generated lot is gone before its end');
    return { lot, from };
  }
}
