/** The rows of the record: a plant by a method under one name of protocol, and their order. */
import type { PropagationMethod } from '@rootclock/domain';
import { isComingUp, shapesInAll, shareInAll, type ShownStage, shownStages, type Weighing } from '../learned.ts';
import type { NurseryRecord, RecordPlant } from '../record-data.ts';

export interface RecordRow {
  id: string;
  plant: RecordPlant;
  method: PropagationMethod;
  label: string;
  hasProtocol: boolean;
  cameUp: ShownStage | null;
  prickedOut: ShownStage | null;
  grownOn: ShownStage | null;
  inAll: { share: number; low: number; high: number } | null;
  /** Cells, pieces and plants that were tried, at all stages. */
  tried: number;
}

export const RECORD_SORTS = ['plant', 'cameUp', 'prickedOut', 'grownOn', 'inAll', 'tried'] as const;
export type RecordSort = (typeof RECORD_SORTS)[number];

export function rowsOf(record: Pick<NurseryRecord, 'plants' | 'shares'>, weighing: Weighing): RecordRow[] {
  const plants = new Map(record.plants.map((plant) => [plant.plantId, plant]));
  return record.shares.flatMap((shares) => {
    const plant = plants.get(shares.plantId);
    if (!plant) return [];
    const stages = shownStages(shares, weighing);
    const shapes = shapesInAll(shares, weighing);
    return [
      {
        id: `${shares.plantId}/${shares.method}/${shares.label}`,
        plant,
        method: shares.method,
        label: shares.label,
        hasProtocol: shares.protocol !== null,
        cameUp: stages.find(({ stage }) => isComingUp(stage)) ?? null,
        prickedOut: stages.find(({ stage }) => stage === 'pricking-out') ?? null,
        grownOn: stages.find(({ stage }) => stage === 'growing-on') ?? null,
        inAll: shapes && shareInAll(shapes),
        tried: stages.reduce((sum, { tried }) => sum + tried, 0),
      },
    ];
  });
}

const figureOf = (row: RecordRow, sort: RecordSort): number | null =>
  sort === 'tried' ? row.tried : sort === 'plant' ? null : (row[sort]?.share ?? null);

/** Rows without the figure come last, whichever way they are sorted. */
export function sorted(rows: readonly RecordRow[], sort: RecordSort, descending: boolean): RecordRow[] {
  const byName = (a: RecordRow, b: RecordRow) =>
    a.plant.scientificName.localeCompare(b.plant.scientificName) || a.id.localeCompare(b.id);
  const turn = descending ? -1 : 1;
  return [...rows].sort((a, b) => {
    if (sort === 'plant') return turn * byName(a, b);
    const [one, other] = [figureOf(a, sort), figureOf(b, sort)];
    if (one === null || other === null) return one === other ? byName(a, b) : one === null ? 1 : -1;
    return turn * (one - other) || byName(a, b);
  });
}

export function matches(row: RecordRow, text: string): boolean {
  const wanted = text.trim().toLowerCase();
  return [row.plant.scientificName, row.plant.vernacularName, row.plant.code, row.label].some((name) =>
    name.toLowerCase().includes(wanted),
  );
}
