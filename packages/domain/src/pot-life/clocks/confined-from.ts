import { addDays, type CalendarDate, earliestOf, latestOf, requireDate } from '../../kernel/dates.ts';
import { requireWhole } from '../../kernel/input.ts';
import { earliestOfDay } from '../../kernel/rough-days.ts';

/**
 * How plants came into their first cell or pot, which says when their roots were first confined.
 * `cell-sown`: sown into cells. `flat`: sown into an open flat. `cutting`: stuck as cuttings. `division`, `lifted` and
 * `bare-root`: potted from roots that were free until then. `bought-plugs`: bought in cells or pots. `opening`: stood
 * here when the nursery's records began.
 */
export const CONFINED_ORIGINS = [
  'cell-sown',
  'flat',
  'cutting',
  'division',
  'lifted',
  'bare-root',
  'bought-plugs',
  'opening',
] as const;
export type ConfinedOrigin = (typeof CONFINED_ORIGINS)[number];

export type ConfinedFromInput =
  | { kind: 'cell-sown'; firstEmergedOn: CalendarDate | null }
  | { kind: 'flat'; prickedOutOn: CalendarDate | null }
  | { kind: 'cutting'; firstRootedOn: CalendarDate | null }
  | { kind: 'division' | 'lifted' | 'bare-root'; pottedOn: CalendarDate | null }
  | {
      kind: 'bought-plugs';
      arrivedOn: CalendarDate;
      /** The vendor's sowing day, as rough as it was stated ('2026-02-10', '2026-02', '2026-winter', '2026'). */
      sown?: string | null;
      /** Days from sowing to emergence, as stated or as the protocol has it. */
      germinationDays?: number | null;
    }
  | { kind: 'opening'; since: string };

export interface ConfinedFrom {
  /** Null while nothing is confined yet: nothing has emerged, rooted or been potted. */
  confinedOn: CalendarDate | null;
  /** True when the day is a guess on the safe, early side. */
  assumed: boolean;
}

/** Bought plugs of unknown sowing are taken to have stood ten weeks in their cells on arrival (assumed). */
export const PLUG_AGE_ON_ARRIVAL_DAYS = 70;

const known = (argument: string, on: CalendarDate | null): ConfinedFrom => ({
  confinedOn: on === null ? null : requireDate(argument, on),
  assumed: false,
});

function boughtPlugs({
  arrivedOn,
  sown,
  germinationDays,
}: Extract<ConfinedFromInput, { kind: 'bought-plugs' }>): ConfinedFrom {
  requireDate('arrivedOn', arrivedOn);
  const guessOn = addDays(arrivedOn, -PLUG_AGE_ON_ARRIVAL_DAYS);
  if (sown == null) return { confinedOn: guessOn, assumed: true };
  const { earliestOn, precision } = earliestOfDay(sown, 'sown');
  // No plug is older than its seed, nor did it emerge after it had arrived as a plant.
  if (germinationDays == null)
    return { confinedOn: earliestOf(latestOf(guessOn, earliestOn), arrivedOn), assumed: true };
  const emergedOn = addDays(earliestOn, requireWhole('germinationDays', germinationDays, 0, 1000));
  return { confinedOn: earliestOf(emergedOn, arrivedOn), assumed: precision !== 'day' || emergedOn > arrivedOn };
}

/**
 * Since when the roots are confined. In cells: first emergence and never sowing, since seed sown in November waits out the
 * winter and would spend half its clock as seed. Open flat: pricking out. Cutting: first rooted count. Division, lifted or
 * bare root: potting. Bought plugs: stated sowing plus germination days, else arrival less ten weeks, marked assumed.
 * Opening stock: the earliest day of what is remembered. Throws InputError for a day that does not exist.
 */
export function confinedFrom(input: ConfinedFromInput): ConfinedFrom {
  switch (input.kind) {
    case 'cell-sown':
      return known('firstEmergedOn', input.firstEmergedOn);
    case 'flat':
      return known('prickedOutOn', input.prickedOutOn);
    case 'cutting':
      return known('firstRootedOn', input.firstRootedOn);
    case 'division':
    case 'lifted':
    case 'bare-root':
      return known('pottedOn', input.pottedOn);
    case 'bought-plugs':
      return boughtPlugs(input);
    case 'opening': {
      const { earliestOn, precision } = earliestOfDay(input.since, 'since');
      return { confinedOn: earliestOn, assumed: precision !== 'day' };
    }
  }
}
