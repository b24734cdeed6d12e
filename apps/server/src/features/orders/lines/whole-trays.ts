import { besidesWholeTrays } from '@rootclock/domain';
import { refuse } from '../../../refusal.ts';

/** Plants in plug trays are asked for, and tied to a line, in whole trays. */
export function requireWholeTrays(units: number, cells: number | null, field: string): void {
  const besides = besidesWholeTrays(units, cells);
  if (besides) refuse('whole-trays-only', { ...besides }, field);
}
