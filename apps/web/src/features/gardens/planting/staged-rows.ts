/** What stands pulled for an order, one row for each line and lot, and how many of each a form means. */
import type { promises } from '@rootclock/contracts';

export interface StagedRow {
  key: string;
  lineId: string;
  lotId: string;
  lotCode: string;
  scientificName: string;
  containerCode: string;
  bedName: string | null;
  units: number;
}

export const stagedRows = (order: promises.OrderPage): StagedRow[] =>
  order.lineRows.flatMap((line) =>
    line.staged.map((staged) => ({
      ...staged,
      key: `${line.id}/${staged.lotId}`,
      lineId: line.id,
      bedName: line.bedName,
    })),
  );

/** Units typed by row; a row that nobody touched means what the form begins with. */
export type TypedUnits = Readonly<Record<string, number | null>>;

/** The rows that are meant, with their units. An emptied field means none; what cannot be read stays in, so that the contract says so. */
export function meantRows(
  rows: readonly StagedRow[],
  typed: TypedUnits,
  begins: 'all' | 'none',
): { row: StagedRow; units: number }[] {
  return rows.map((row) => ({ row, units: unitsOf(row, typed, begins) ?? 0 })).filter(({ units }) => units !== 0);
}

export function unitsOf(row: StagedRow, typed: TypedUnits, begins: 'all' | 'none'): number | null {
  const value = typed[row.key];
  return value === undefined ? (begins === 'all' ? row.units : 0) : value;
}

/** The sum of what can be read. */
export const totalOf = (meant: readonly { units: number }[]): number =>
  meant.reduce((sum, { units }) => sum + (Number.isFinite(units) ? units : 0), 0);
