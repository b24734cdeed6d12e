// Living lots as those who work with them know them, and the next sensible command for one.
import { randomUUID } from 'node:crypto';
import { type Chance, chanceFrom } from '@rootclock/server/demo/random';
import pg from 'pg';
import { TODAY } from '../load/grounds.ts';
import type { Nursery } from '../nursery.ts';

export interface LiveLot {
  lotId: string;
  /** Units by place, kept in step with what was acknowledged. */
  places: Map<string, number>;
  /** On hand and promised to nobody, when they were read. */
  freeUnits: number;
}

export const KINDS = ['loseFromLot', 'moveLot', 'countLot'] as const;
export type CommandKind = (typeof KINDS)[number];

export interface NextCommand {
  kind: CommandKind;
  lot: LiveLot;
  placeId: string;
  toPlaceId: string;
  /** What the units at the place and at the other place become. */
  change: { here: number; there: number };
  sent: { commandId: string; body: object };
}

/** Every living lot that is not held, with the open places of benches and yards. */
export async function readStock({ ownerUrl, nurseryId }: Nursery): Promise<{ lots: LiveLot[]; places: string[] }> {
  const client = new pg.Client({ connectionString: ownerUrl });
  await client.connect();
  try {
    const { rows } = await client.query<{ lotId: string; placeId: string; units: number; freeUnits: number }>(
      `SELECT a.lot_id::text AS "lotId", a.place_id::text AS "placeId", a.units,
              (sum(a.units) OVER (PARTITION BY a.lot_id) - coalesce((SELECT sum(r.units) FROM reservation r WHERE r.nursery_id = a.nursery_id AND r.lot_id = a.lot_id), 0))::int AS "freeUnits"
         FROM account a WHERE a.nursery_id = $1 AND a.kind = 'place' AND a.lot_id IS NOT NULL AND a.units > 0
          AND NOT EXISTS (SELECT 1 FROM hold h WHERE h.nursery_id = a.nursery_id AND h.lot_id = a.lot_id AND h.released_on IS NULL)
        ORDER BY a.lot_id, a.place_id`,
      [nurseryId],
    );
    const lots = new Map<string, LiveLot>();
    for (const { lotId, placeId, units, freeUnits } of rows) {
      const lot = lots.get(lotId) ?? { lotId, places: new Map<string, number>(), freeUnits };
      lots.set(lotId, lot);
      lot.places.set(placeId, units);
    }
    const { rows: places } = await client.query<{ id: string }>(
      `SELECT id::text FROM place WHERE nursery_id = $1 AND kind IN ('bench', 'yard') ORDER BY code`,
      [nurseryId],
    );
    return { lots: [...lots.values()], places: places.map(({ id }) => id) };
  } finally {
    await client.end();
  }
}

/** Someone who works through lots of their own, so that no command is refused for what another did in between. */
export class Worker {
  private readonly chance: Chance;
  private turn = 0;

  /** `countsUp` makes every count find one more; else every other one finds one fewer. */
  constructor(
    private readonly lots: readonly LiveLot[],
    private readonly places: readonly string[],
    seed: number,
    private readonly countsUp = false,
  ) {
    this.chance = chanceFrom(seed);
  }

  next(kind: CommandKind = KINDS[this.turn++ % KINDS.length] ?? 'loseFromLot'): NextCommand {
    const lot = this.chance.pick(this.lots);
    const [placeId, units] = this.chance.pick([...lot.places].filter(([, there]) => there > 1));
    const toPlaceId = this.chance.pick(this.places.filter((place) => place !== placeId));
    const found = this.countsUp || this.chance.share() < 0.5 ? 1 : -1;
    const entry = { lotId: lot.lotId, placeId, happenedOn: TODAY };
    const commandId = randomUUID();
    switch (kind) {
      case 'loseFromLot':
        return {
          kind,
          lot,
          placeId,
          toPlaceId,
          change: { here: -1, there: 0 },
          sent: { commandId, body: { ...entry, units: 1, cause: 'weather' } },
        };
      case 'moveLot':
        return {
          kind,
          lot,
          placeId,
          toPlaceId,
          change: { here: -1, there: 1 },
          sent: { commandId, body: { ...entry, toPlaceId, units: 1 } },
        };
      case 'countLot':
        return {
          kind,
          lot,
          placeId,
          toPlaceId,
          change: { here: found, there: 0 },
          sent: { commandId, body: { ...entry, countedUnits: units + found, countKind: 'counted' } },
        };
    }
  }

  /** What was acknowledged has happened. */
  done({ lot, placeId, toPlaceId, change }: NextCommand): void {
    lot.places.set(placeId, (lot.places.get(placeId) ?? 0) + change.here);
    if (change.there !== 0) lot.places.set(toPlaceId, (lot.places.get(toPlaceId) ?? 0) + change.there);
  }
}

/** Lots are shared out so that each worker has its own. */
export const sharedOut = (lots: readonly LiveLot[], among: number): LiveLot[][] =>
  Array.from({ length: among }, (_, nth) => lots.filter((_lot, at) => at % among === nth));
