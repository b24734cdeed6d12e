import { isCalendarDate } from '@rootclock/domain';
import type { StartAsk } from '../../../lib/paths.ts';

const ID = /^[0-9a-f]{8}-[0-9a-f]{4}-[0-9a-f]{4}-[0-9a-f]{4}-[0-9a-f]{12}$/i;
const MOST_UNITS = 10_000_000;
const MOST_GRAMS = 1_000_000;

type Search = Readonly<Record<string, unknown>>;

const idIn = (search: Search, name: string): string | null =>
  typeof search[name] === 'string' && ID.test(search[name]) ? search[name] : null;
const dayIn = (search: Search, name: string): string | null => (isCalendarDate(search[name]) ? search[name] : null);

function numberIn(search: Search, name: string, least: number, most: number, whole = true): number | null {
  const value = Number(search[name] ?? Number.NaN);
  return value >= least && value <= most && (!whole || Number.isInteger(value)) ? value : null;
}

/** What the address asks the form for. Addresses are typed by hand too: whatever cannot be is left out, as if it had not been asked. */
export function readAsk(search: Search): Partial<StartAsk> {
  const plantId = idIn(search, 'plantId');
  return {
    ...(plantId ? { plantId } : {}),
    protocolVersionId: idIn(search, 'protocolVersionId'),
    sourceId: idIn(search, 'sourceId'),
    packsId: idIn(search, 'packsId'),
    targetContainerId: idIn(search, 'targetContainerId'),
    placeId: idIn(search, 'placeId'),
    units: numberIn(search, 'units', 1, MOST_UNITS),
    trays: numberIn(search, 'trays', 1, MOST_UNITS),
    seedsSown: numberIn(search, 'seedsSown', 1, MOST_UNITS),
    seedGrams: numberIn(search, 'seedGrams', 0.001, MOST_GRAMS, false),
    cautiousUnits: numberIn(search, 'cautiousUnits', 0, MOST_UNITS),
    usualUnits: numberIn(search, 'usualUnits', 0, MOST_UNITS),
    stagePosition: numberIn(search, 'stagePosition', 0, 10),
    readyOn: dayIn(search, 'readyOn'),
    day: dayIn(search, 'day'),
  };
}
