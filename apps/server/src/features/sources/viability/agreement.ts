import { viabilityOf } from '@rootclock/domain';

export interface Counted {
  seedsPerReplicate: number;
  replicates: readonly number[];
}

export interface Agreement {
  /** Between the best and the worst replicate, in per cent of its seeds. */
  rangePercent: number;
  /** The largest range that the published table allows; null where it has none for such a test. */
  tolerancePercent: number | null;
  toRepeat: boolean;
}

/** The table is for replicates of a hundred seeds; stretching it to other sizes would be our own invention. */
const TABLED_SEEDS = 100;

/** Sound seed as a share of all that were tested. */
export const meanShareOf = ({ seedsPerReplicate, replicates }: Counted): number =>
  replicates.reduce((sum, sound) => sum + sound, 0) / (replicates.length * seedsPerReplicate);

/** Whether the replicates of a test agree well enough, by 7 CFR 201.55(a). Without a published tolerance a test is taken as it is. */
export function agreementOf({ seedsPerReplicate, replicates }: Counted): Agreement {
  if (seedsPerReplicate !== TABLED_SEEDS) {
    return {
      rangePercent: ((Math.max(...replicates) - Math.min(...replicates)) / seedsPerReplicate) * 100,
      tolerancePercent: null,
      toRepeat: false,
    };
  }
  const { rangePercent, tolerancePercent, repeat } = viabilityOf(replicates);
  return { rangePercent, tolerancePercent, toRepeat: repeat === true };
}
