// Garden orders of a generated history: those that its plantings were for, and those that are open.
import type { Chance } from '@rootclock/server/demo/random';
import type { Sheets } from './copy.ts';
import { written } from './ledger.ts';
import { type Grounds, today } from './grounds.ts';

interface Item {
  plantId: string;
  containerId: string;
}

export class Orders {
  private number = 0;
  private rank = 0;
  private readonly order;
  private readonly line;
  private readonly alternative;

  constructor(
    sheets: Sheets,
    private readonly grounds: Grounds,
  ) {
    this.order = sheets.open(
      'garden_order',
      'nursery_id, id, code, client_id, site_id, kind, due_on, state, pull_issued_on',
    );
    this.line = sheets.open('order_line', 'nursery_id, id, order_id, rank, plant_id, container_id, units, untreated');
    this.alternative = sheets.open('line_alternative', 'nursery_id, line_id, plant_id, container_id, penalty');
  }

  /** An order whose plants were pulled on a day. Answers its line for each item. */
  pulled(chance: Chance, day: number, items: (Item & { units: number })[], state: 'done' | 'open'): string[] {
    const orderId = this.add(chance, state === 'open' ? today + 3 : day, state, day);
    return items.map((item) => this.addLine(chance, orderId, item, item.units));
  }

  /** Open orders over items that live lots are of, until there are so many lines. */
  open(chance: Chance, items: readonly Item[], lines: number): void {
    for (let left = lines; left > 0;) {
      const orderId = this.add(chance, today + chance.whole(1, 150), 'open', null);
      const many = Math.min(left, chance.whole(4, 14));
      for (let nth = 0; nth < many; nth++) {
        const item = chance.pick(items);
        const lineId = this.addLine(chance, orderId, item, chance.whole(5, 60));
        const other = chance.pick(this.grounds.pots);
        if (chance.share() < 0.1 && other.id !== item.containerId)
          this.alternative(this.grounds.nurseryId, lineId, item.plantId, other.id, 1);
      }
      left -= many;
    }
  }

  private add(chance: Chance, dueDay: number, state: string, issuedDay: number | null): string {
    const id = chance.id();
    const { id: clientId, siteId } = chance.pick(this.grounds.clients);
    const kind = chance.pick(['installation', 'installation', 'pickup']);
    const due = written(dueDay);
    this.order(
      this.grounds.nurseryId,
      id,
      `G-${due.slice(2, 4)}-${String(++this.number).padStart(3, '0')}`,
      clientId,
      siteId,
      kind,
      due,
      state,
      issuedDay === null ? null : written(issuedDay),
    );
    return id;
  }

  private addLine(chance: Chance, orderId: string, { plantId, containerId }: Item, units: number): string {
    const id = chance.id();
    this.line(this.grounds.nurseryId, id, orderId, ++this.rank, plantId, containerId, units, chance.share() < 0.05);
    return id;
  }
}
