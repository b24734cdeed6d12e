// A nursery's ledger in memory, as small as it can be while it still knows what must happen to units, holds and orders.
import { idOf } from '../support/nursery.ts';
import type { StageWord } from './stages.ts';

/** What a line asks for and a lot is: one plant, in a small pot without any limit or in a big one that must be left in twenty days. */
export type Item = 'small' | 'big';

export interface ModelLot {
  id: string;
  item: Item;
  /** Open holds by reason, with the entry that opened each. */
  holds: Map<string, string>;
}

export interface ModelLine {
  id: string;
  orderId: string;
  item: Item;
  wanted: number;
  isWithdrawn: boolean;
}

export interface ModelOrder {
  id: string;
  dueOn: string;
  isOpen: boolean;
}

/** Units from one account to another; null is outside. Only where plants are divided or clumped the two counts differ. */
export interface Move {
  from: string | null;
  to: string | null;
  units: number;
  toUnits?: number;
}

export interface ModelEntry {
  id: string;
  kind: string;
  moves: Move[];
  isReversed: boolean;
  /** Orders that the entry brought plants to or from. */
  orderIds: string[];
  /** Lots and lines that it concerned, as its reversal does. */
  concerns: string[];
  /** Lots among which it only changed labels, as its reversal does. */
  carries?: string[];
  /** What it says of the stages of batches. */
  stages?: StageWord[];
  cancels?: boolean;
  released?: { lotId: string; reason: string; openedBy: string };
}

export interface ModelBatch {
  id: string;
  unit: 'pack' | 'cell';
  begunOn: string;
}

/** Seed that came into the store or, below nothing, went out of it. */
export interface ModelBooking {
  movementId: string | null;
  grams: number;
  isTakenBack: boolean;
}

/** A lot at a place, and a lot staged for a line. */
export const at = (lotId: string, placeId: string) => `${lotId}@${placeId}`;
export const staged = (lotId: string, lineId: string) => `${lotId}>${lineId}`;
/** Where planted units end: it counts what a line has had, and nothing leaves it but by reversal. */
export const planted = (lineId: string) => `planted>${lineId}`;
const isOutside = (account: string) => account.startsWith('planted>');

export class Ledger {
  readonly lots = new Map<string, ModelLot>();
  readonly batches = new Map<string, ModelBatch>();
  readonly orders = new Map<string, ModelOrder>();
  readonly lines = new Map<string, ModelLine>();
  /** Open lines and closed, those that are served first going first. */
  ranking: string[] = [];
  readonly entries: ModelEntry[] = [];
  readonly units = new Map<string, number>();
  /** Pinned units by `line/lot`, as the nursery had them after the last step. */
  pins = new Map<string, number>();
  /** Seed of the one source, in whole grams. */
  readonly bookings: ModelBooking[] = [];
  seedGrams = 0;
  private steps = 0;

  constructor(
    readonly placeIds: readonly string[],
    readonly quarantineId: string,
  ) {}

  /** Ids follow from the step, so that a course that is run again names the same rows. */
  id(what: string): string {
    return idOf(what, String(this.steps));
  }

  next(): void {
    this.steps += 1;
  }

  of(account: string): number {
    return this.units.get(account) ?? 0;
  }

  standing(lotId: string): string[] {
    return this.placeIds.filter((placeId) => this.of(at(lotId, placeId)) > 0);
  }

  lot(id: string): ModelLot {
    return known(this.lots.get(id));
  }

  line(id: string): ModelLine {
    return known(this.lines.get(id));
  }

  order(id: string): ModelOrder {
    return known(this.orders.get(id));
  }

  linesOf(orderId: string): ModelLine[] {
    return [...this.lines.values()].filter((line) => line.orderId === orderId);
  }

  stagedFor(lineId: string): number {
    return [...this.lots.keys()].reduce((sum, lotId) => sum + this.of(staged(lotId, lineId)), 0);
  }

  /** What a line still wants; more may have been planted than was asked for. */
  openUnits(line: ModelLine): number {
    return Math.max(0, line.wanted - this.stagedFor(line.id) - this.of(planted(line.id)));
  }

  addLot(id: string, item: Item): void {
    this.lots.set(id, { id, item, holds: new Map() });
  }

  post(entry: Omit<ModelEntry, 'isReversed' | 'orderIds' | 'concerns'> & { orderIds?: string[] }): void {
    for (const move of entry.moves) this.apply(move);
    this.entries.push({ isReversed: false, orderIds: [], concerns: [], ...entry });
  }

  /** A weighing that found what the books said is no booking. */
  bookSeed(booking: ModelBooking): void {
    if (booking.grams === 0) return;
    this.seedGrams += booking.grams;
    this.bookings.push(booking);
  }

  takeSeedBack(booking: ModelBooking): void {
    this.seedGrams -= booking.grams;
    booking.isTakenBack = true;
  }

  private apply({ from, to, units, toUnits = units }: Move): void {
    if (from !== null) this.units.set(from, this.of(from) - units);
    if (to !== null) this.units.set(to, this.of(to) + toUnits);
    if (from !== null && this.of(from) < 0) throw new Error(`the model took ${units} too many from ${from}`);
  }

  /** Whether what an entry brought is still there to be taken back. */
  couldReverse(entry: ModelEntry): boolean {
    const net = new Map<string, number>();
    for (const { from, to, units, toUnits = units } of entry.moves) {
      if (from !== null) net.set(from, (net.get(from) ?? 0) - units);
      if (to !== null) net.set(to, (net.get(to) ?? 0) + toUnits);
    }
    return [...net].every(([account, units]) => isOutside(account) || this.of(account) >= units);
  }

  reverse(entry: ModelEntry, reversalId: string): void {
    // What comes in goes first: on the way an account may be short of what the same entry gives back to it.
    const mirrored = entry.moves.map(({ from, to, units, toUnits = units }) => ({
      from: to,
      to: from,
      units: toUnits,
      toUnits: units,
    }));
    for (const { to, toUnits } of mirrored) if (to !== null) this.units.set(to, this.of(to) + toUnits);
    for (const { from, units } of mirrored) if (from !== null) this.units.set(from, this.of(from) - units);
    for (const lot of this.lots.values())
      for (const [reason, openedBy] of lot.holds) if (openedBy === entry.id) lot.holds.delete(reason);
    const { released } = entry;
    if (
      released &&
      !this.lot(released.lotId).holds.has(released.reason) &&
      !this.entries.some(({ id, isReversed }) => id === released.openedBy && isReversed)
    ) {
      this.lot(released.lotId).holds.set(released.reason, released.openedBy);
    }
    for (const orderId of entry.orderIds) this.order(orderId).isOpen = true;
    entry.isReversed = true;
    this.entries.push({ id: reversalId, kind: 'reverse', moves: [], isReversed: false, orderIds: [], concerns: [] });
  }

  /** Plants keep their holds when they get another label. */
  inheritHolds(entryId: string, parents: readonly string[], childId: string): void {
    for (const parent of parents)
      for (const reason of this.lot(parent).holds.keys())
        if (!this.lot(childId).holds.has(reason)) this.lot(childId).holds.set(reason, entryId);
  }
}

function known<Row>(row: Row | undefined): Row {
  if (row === undefined) throw new Error('the model names something it does not know');
  return row;
}
