/** The parts of what is wanted, in the order in which plants travel: delivered, pulled, reserved, and what is still short. */
export const PARTS = ['delivered', 'staged', 'reserved', 'short'] as const;
export type Part = (typeof PARTS)[number];

export interface Counted {
  wantedUnits: number;
  reservedUnits: number;
  stagedUnits: number;
  deliveredUnits: number;
  shortUnits: number;
}

/** Only parts that hold units; none for an order without lines. */
export function partsOf({
  reservedUnits,
  stagedUnits,
  deliveredUnits,
  shortUnits,
}: Counted): { part: Part; units: number }[] {
  const units: Record<Part, number> = {
    delivered: deliveredUnits,
    staged: stagedUnits,
    reserved: reservedUnits,
    short: shortUnits,
  };
  return PARTS.map((part) => ({ part, units: units[part] })).filter((each) => each.units > 0);
}
