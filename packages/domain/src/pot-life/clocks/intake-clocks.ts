import { type CalendarDate, earliestOf, latestOf, requireDate } from '../../kernel/dates.ts';
import { type DayPrecision, earliestOfDay } from '../../kernel/rough-days.ts';
import { subtractSpan } from '../../kernel/spans.ts';
import type { BoughtForm } from '../../stock/intake-words.ts';
import type { ContainerKind } from '../../stock/ledger-words.ts';
import { confinedFrom } from './confined-from.ts';

/** The days a lot begins with when it is taken in, and which of them are guesses on the early side. */
export interface IntakeClocks {
  /** Since when it stands in its container, the earliest possible day; nothing can be recorded of the lot before it. */
  pottedOn: CalendarDate;
  pottedPrecision: DayPrecision;
  confinedOn: CalendarDate | null;
  confinedAssumed: boolean;
  containerOn: CalendarDate | null;
  containerAssumed: boolean;
}

/** Opening stock of which nobody knows since when it stands is taken to have stood this long (assumed). */
export const UNKNOWN_AGE = 'P1Y';

export interface OpeningInput {
  /** Since when the plants stand in this container, as people remember it; null when nobody does. */
  since: string | null;
  /** Since when their roots are in any cell or pot, where that is longer. */
  confinedSince?: string | null;
  /** The day of the stocktaking. */
  countedOn: CalendarDate;
  /** The earliest day on which seed or cuttings were gathered: no plant is older than that. */
  gatheredOn?: CalendarDate | null;
  containerKind: ContainerKind;
}

/**
 * The clocks of plants that stood here when the records began. They take the earliest day of what is remembered. When nothing is,
 * a year before the stocktaking (or the gathering, if that was later), so that such plants come up for a look at once. In the ground
 * no clock runs; an open flat confines no roots, but is a container. Throws InputError for a day that does not exist.
 */
export function openingClocks({
  since,
  confinedSince,
  countedOn,
  gatheredOn,
  containerKind,
}: OpeningInput): IntakeClocks {
  requireDate('countedOn', countedOn);
  const { earliestOn, precision } =
    since === null ? unknownSince(countedOn, gatheredOn ?? null) : earliestOfDay(since, 'since');
  const potted = { pottedOn: earliestOn, pottedPrecision: precision };
  if (containerKind === 'ground')
    return { ...potted, confinedOn: null, confinedAssumed: false, containerOn: null, containerAssumed: false };
  const containerAssumed = precision !== 'day';
  if (containerKind === 'flat')
    return { ...potted, confinedOn: null, confinedAssumed: false, containerOn: earliestOn, containerAssumed };
  const earlier = confinedSince ? confinedFrom({ kind: 'opening', since: confinedSince }) : null;
  const confinedOn = earlier?.confinedOn ? earliestOf(earlier.confinedOn, earliestOn) : earliestOn;
  return {
    ...potted,
    confinedOn,
    confinedAssumed: earlier?.confinedOn === confinedOn ? earlier.assumed : containerAssumed,
    containerOn: earliestOn,
    containerAssumed,
  };
}

function unknownSince(
  countedOn: CalendarDate,
  gatheredOn: CalendarDate | null,
): { earliestOn: CalendarDate; precision: DayPrecision } {
  const guessOn = subtractSpan(countedOn, UNKNOWN_AGE);
  return {
    earliestOn: gatheredOn === null ? guessOn : earliestOf(latestOf(guessOn, gatheredOn), countedOn),
    precision: 'year',
  };
}

export interface BoughtInput {
  form: BoughtForm;
  arrivedOn: CalendarDate;
  /** The vendor's sowing day, as rough as it was stated. */
  sown?: string | null;
  germinationDays?: number | null;
  /** Since when bought pots stand in their pot, as the vendor stated it. */
  inPotSince?: string | null;
  containerKind: ContainerKind;
}

/**
 * The clocks of plants that were bought. Plugs and pots bring the time they stood at the vendor's; a container day that was not
 * stated is taken from the confined day, the earliest it can be. Bare root begins when it is potted on arrival, and
 * whatever goes straight into the ground has none. Throws InputError for a day that does not exist.
 */
export function boughtClocks({
  form,
  arrivedOn,
  sown,
  germinationDays,
  inPotSince,
  containerKind,
}: BoughtInput): IntakeClocks {
  const potted = { pottedOn: requireDate('arrivedOn', arrivedOn), pottedPrecision: 'day' as const };
  if (containerKind === 'ground')
    return { ...potted, confinedOn: null, confinedAssumed: false, containerOn: null, containerAssumed: false };
  if (form === 'bare-root')
    return {
      ...potted,
      confinedOn: arrivedOn,
      confinedAssumed: false,
      containerOn: arrivedOn,
      containerAssumed: false,
    };
  const { confinedOn: grownOn, assumed } = confinedFrom({
    kind: 'bought-plugs',
    arrivedOn,
    sown: sown ?? null,
    germinationDays: germinationDays ?? null,
  });
  const confinedOn = grownOn ?? arrivedOn;
  if (form === 'plugs' || !inPotSince)
    return {
      ...potted,
      confinedOn,
      confinedAssumed: assumed,
      containerOn: confinedOn,
      containerAssumed: assumed || form === 'pots',
    };
  const { earliestOn, precision } = earliestOfDay(inPotSince, 'inPotSince');
  const containerOn = earliestOf(earliestOn, arrivedOn);
  // Roots were confined no later than they came into this pot.
  return {
    ...potted,
    confinedOn: earliestOf(confinedOn, containerOn),
    confinedAssumed: containerOn < confinedOn ? precision !== 'day' : assumed,
    containerOn,
    containerAssumed: precision !== 'day',
  };
}
