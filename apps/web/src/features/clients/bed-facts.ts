/** A bed's size, light, moisture and plants in one line. */
import type { clients as contracts } from '@rootclock/contracts';
import { useFormat } from '../../lib/format/index.ts';
import { useMessages } from '../../messages/index.ts';
import { CM2_PER_M2 } from './area.ts';

export function useBedFacts(): (bed: contracts.BedRow) => string {
  const { clients } = useMessages();
  const { measures } = useFormat();
  return (bed) =>
    [
      bed.areaCm2 !== null && measures.area(bed.areaCm2 / CM2_PER_M2),
      bed.sun && clients.sunIs[bed.sun],
      bed.moisture && clients.moistureIs[bed.moisture],
      clients.plantedHere(bed.plantedUnits),
    ]
      .filter(Boolean)
      .join(' · ');
}
