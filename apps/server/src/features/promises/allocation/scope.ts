import { ORDER_KINDS, type PlantByState, type PlantingWindow } from '@rootclock/domain';
import * as z from 'zod/mini';

/** An open line as far as its filling is concerned. */
export const scopeLine = z.strictObject({
  id: z.string(),
  orderId: z.string(),
  orderCode: z.string(),
  orderKind: z.enum(ORDER_KINDS),
  clientName: z.string(),
  siteName: z.nullable(z.string()),
  region: z.nullable(z.string()),
  leadDays: z.number(),
  rank: z.number(),
  dueOn: z.string(),
  plantId: z.string(),
  scientificName: z.string(),
  containerCode: z.string(),
  /** Of the container asked for: where it has cells, the line takes whole trays of so many and nothing else. */
  cells: z.nullable(z.number()),
  units: z.number(),
  stagedUnits: z.number(),
  deliveredUnits: z.number(),
  seedZone: z.nullable(z.string()),
  wildType: z.boolean(),
  untreated: z.boolean(),
  /** The order takes only what is native to the region of its site. */
  nativesOnly: z.boolean(),
  /** The item asked for at penalty 0, then its alternatives. */
  accepts: z.array(z.strictObject({ item: z.string(), penalty: z.number() })),
  /** Lots and batches that a person released from this line. */
  refusedIds: z.array(z.string()),
});
export type ScopeLine = z.infer<typeof scopeLine>;

/** A lot or batch whose item lines of the scope accept. */
export interface ScopeSupply {
  id: string;
  kind: 'lot' | 'batch';
  code: string;
  item: string;
  plantId: string;
  scientificName: string;
  containerId: string;
  containerCode: string;
  containerMl: number | null;
  /** Where its container has cells, whole trays of so many can be promised. */
  cells: number | null;
  /** On hand at places that may be promised from, or a batch's cautious yield. */
  units: number;
  /** On hand at quarantine places: there, but no supply. */
  quarantinedUnits: number;
  held: boolean;
  /** Null where nobody knows yet when its root balls will hold: then it serves nobody. */
  readyOn: string | null;
  rootChecked: boolean;
  plantByOn: string | null;
  plantByState: PlantByState;
  limitOn: string | null;
  /** The day the clock of the rule that binds began. */
  clockOn: string | null;
  seedZone: string | null;
  origin: string;
  isCultivar: boolean;
  /** Regions to which the plant is known to be native. */
  nativeRegions: string[];
  sourceKind: string;
  pesticideStatement: string | null;
  /** Some treatment of it, or of what it came from, stands in the ledger. */
  treated: boolean;
}

/** A stored reservation. Its line or its supply may have left the scope: then it is given up. */
export const scopeReservation = z.strictObject({
  lineId: z.string(),
  supplyId: z.string(),
  supplyKind: z.enum(['lot', 'batch']),
  units: z.number(),
  pinned: z.boolean(),
});
export type ScopeReservation = z.infer<typeof scopeReservation>;

/** A lot or batch that gave plants to another. */
export const scopeHeir = z.strictObject({ fromId: z.string(), toId: z.string() });
export type ScopeHeir = z.infer<typeof scopeHeir>;

/** Everything that has to be looked at together: lines and supplies that are linked by the items they share. */
export interface Scope {
  today: string;
  horizonOn: string;
  lines: ScopeLine[];
  supplies: ScopeSupply[];
  reservations: ScopeReservation[];
  /** Windows of the regions in which sites of the scope lie, together with those for everywhere. */
  windows: PlantingWindow[];
  /** What gave plants to others in the command that is planned for, its reversals included. */
  heirs: ScopeHeir[];
}

export const itemOf = (plantId: string, containerId: string) => `${plantId}@${containerId}`;

/** Units a line still wants: not staged, not planted, not handed over. Never negative, since more may have been planted than was asked for. */
export const openUnits = (line: Pick<ScopeLine, 'units' | 'stagedUnits' | 'deliveredUnits'>) =>
  Math.max(0, line.units - line.stagedUnits - line.deliveredUnits);

/** The day a line is served on: an overdue order is served from today. */
export const servedOn = (line: Pick<ScopeLine, 'dueOn'>, today: string) => (line.dueOn < today ? today : line.dueOn);
