import type { promises } from '@rootclock/contracts';
import {
  deniesPesticides,
  earliestOf,
  judgeLot,
  lastOpenDay,
  leaveBy,
  type LotFacts,
  windowsFor,
} from '@rootclock/domain';
import { type Scope, type ScopeLine, type ScopeSupply, servedOn } from './scope.ts';

export interface Judgement {
  /** Null when the line does not accept the item at all. */
  penalty: number | null;
  reasons: promises.UnfitReason[];
  /** The last day on which plants of this supply may leave for this line. */
  leaveByOn: string | null;
  serves: boolean;
}

/** Judgements by line, then by lot or batch. */
export type Judged = ReadonlyMap<string, ReadonlyMap<string, Judgement>>;

type Circumstances = Pick<Scope, 'today' | 'windows'>;

/** Whether a lot or batch can serve a line, and all that speaks against it. How many are left is not asked here. */
export function judge(supply: ScopeSupply, line: ScopeLine, circumstances: Circumstances): Judgement {
  // Trays and plants by the piece never stand in for each other, since a line is counted in one of them.
  const accepted = line.accepts
    .filter(({ item }) => item === supply.item && line.cells === supply.cells)
    .map(({ penalty }) => penalty);
  const penalty = accepted.length > 0 ? Math.min(...accepted) : null;
  const on = servedOn(line, circumstances.today);
  const readyOn = readyFor(supply, circumstances.today);
  const leaveByOn = leaveByFor(supply, line, circumstances);
  const reasons: promises.UnfitReason[] = judgeLot(factsOf(supply), {
    provenanceZones: line.seedZone === null ? null : [line.seedZone],
    wildTypeOnly: line.wildType,
    untreatedOnly: line.untreated,
    nativesOnly: line.nativesOnly,
    region: line.region,
  });
  if (readyOn === null || readyOn > on) reasons.push('not-ready');
  if (leaveByOn !== null && leaveByOn < on) reasons.push('past-plant-by');
  if (line.refusedIds.includes(supply.id)) reasons.push('released-by-hand');
  return { penalty, reasons, leaveByOn, serves: penalty !== null && reasons.length === 0 };
}

/** A pin is a person's own choice of plants and day; but what is held or of another item goes to nobody. */
export const mayHold = ({ penalty, reasons }: Judgement): boolean =>
  penalty !== null && reasons.every((reason) => reason === 'not-ready' || reason === 'past-plant-by');

/** From when plants can go out. A batch that is late is ready from today at the earliest, since somebody has yet to pot it. */
export function readyFor(supply: Pick<ScopeSupply, 'kind' | 'readyOn'>, today: string): string | null {
  if (supply.kind === 'batch' && supply.readyOn !== null && supply.readyOn < today) return today;
  return supply.readyOn;
}

function leaveByFor(
  supply: ScopeSupply,
  line: Pick<ScopeLine, 'orderKind' | 'leadDays' | 'region'>,
  { windows }: Circumstances,
): string | null {
  if (supply.plantByOn === null) return null;
  // Who fetches plants puts them into the ground some days later, at a place and in windows that are not ours to know.
  if (line.orderKind !== 'installation') return leaveBy(supply.plantByOn, line.leadDays);
  const { region } = line;
  if (
    region === null ||
    supply.limitOn === null ||
    supply.plantByState === 'winter-carry' ||
    !windows.some((window) => window.region === region)
  )
    return supply.plantByOn;
  const last = lastOpenDay(windowsFor(windows, { containerMl: supply.containerMl, region }).ranges, supply.limitOn);
  return last === null ? supply.plantByOn : earliestOf(supply.plantByOn, last.on);
}

function factsOf(supply: ScopeSupply): LotFacts {
  return {
    provenanceZone: supply.seedZone,
    wildType: isWildType(supply),
    treated: wasTreated(supply),
    held: supply.held,
    nativeRegions: supply.nativeRegions,
  };
}

/** Seed grown on in cultivation is neither wild nor a selection by itself: only the source can tell, so it stays unknown. */
function isWildType({ isCultivar, origin }: ScopeSupply): boolean | null {
  if (isCultivar) return false;
  return origin === 'wild' ? true : null;
}

/** What was raised here is known by the ledger; of what was bought only the vendor's statement tells. */
function wasTreated({ treated, sourceKind, pesticideStatement }: ScopeSupply): boolean | null {
  if (treated) return true;
  const isBought = sourceKind === 'bought-plants' || sourceKind === 'unknown';
  return isBought && !deniesPesticides(pesticideStatement) ? null : false;
}
