/** The opening list as it is typed: rows of text and choices, what a new row takes from the one above, and the body that is sent. */
import { COUNT_KINDS, SOURCE_KINDS, type CountKind, type SourceKind } from '@rootclock/domain';
import { newId } from '../../../../lib/ids.ts';
import { readNumber } from '../../../../ui/fields/number-field.tsx';
import type { Cell } from '../cells/cells.tsx';
import { readRoughDay } from '../cells/rough-day-text.ts';

export interface OpeningRow {
  lotId: string;
  plant: Cell;
  units: string;
  container: Cell;
  place: Cell;
  since: string;
  confinedSince: string;
  sourceKind: SourceKind | '';
  provenance: string;
  seedZone: string;
  countKind: CountKind;
  rootChecked: boolean;
  note: string;
}

/** What a jotted day is read by. */
interface Reader {
  today: string;
  language: string;
}

const EMPTY: Cell = { value: null, text: '' };

/** A new row under another: container, place, day and manner of counting are as above, plant and units are its own. What could not be read is not passed on. */
export const rowBelow = (above?: OpeningRow, reader?: Reader, lotId = newId()): OpeningRow => ({
  lotId,
  plant: EMPTY,
  units: '',
  container: above?.container ?? EMPTY,
  place: above?.place ?? EMPTY,
  since: above && reader && readRoughDay(above.since, reader).kind === 'known' ? above.since : '',
  confinedSince: '',
  sourceKind: above?.sourceKind ?? '',
  provenance: '',
  seedZone: '',
  countKind: above?.countKind ?? 'counted',
  rootChecked: false,
  note: '',
});

/** Nothing of its own was typed; what it took from above does not count. */
export const isBlank = (row: OpeningRow): boolean =>
  row.plant.text.trim() === '' && row.units.trim() === '' && row.provenance.trim() === '' && row.note.trim() === '';

export const filledRows = (rows: readonly OpeningRow[]): OpeningRow[] => rows.filter((row) => !isBlank(row));

export const unitsIn = (rows: readonly OpeningRow[]): number =>
  rows.reduce((sum, row) => sum + (readNumber(row.units) || 0), 0);

/** An unreadable day goes out as it was typed: the contract then says at that field what is wrong. */
function dayOf(typed: string, reader: Reader): string | null {
  const read = readRoughDay(typed, reader);
  return read.kind === 'known' ? read.text : read.kind === 'unknown' ? null : typed;
}

export const openingBody = (happenedOn: string, rows: readonly OpeningRow[], reader: Reader) => ({
  happenedOn,
  rows: rows.map((row) => ({
    lotId: row.lotId,
    plantId: row.plant.value?.id ?? '',
    units: readNumber(row.units),
    containerId: row.container.value?.id ?? '',
    placeId: row.place.value?.id ?? '',
    since: dayOf(row.since, reader),
    confinedSince: dayOf(row.confinedSince, reader),
    sourceKind: row.sourceKind || null,
    provenance: row.provenance,
    seedZone: row.seedZone,
    countKind: row.countKind,
    rootChecked: row.rootChecked,
    note: row.note,
  })),
});

export interface OpeningDraft {
  /** Null until somebody chose a day: then it is the day on which the list is taken in. */
  happenedOn: string | null;
  rows: OpeningRow[];
}

const isRecord = (value: unknown): value is Record<string, unknown> => typeof value === 'object' && value !== null;
const isPicked = (value: unknown) =>
  value === null || (isRecord(value) && typeof value['id'] === 'string' && typeof value['label'] === 'string');
const isCell = (value: unknown) => isRecord(value) && typeof value['text'] === 'string' && isPicked(value['value']);

/** Whether what this device kept is a draft of this version. */
export function isDraft(kept: unknown): kept is OpeningDraft {
  if (
    !isRecord(kept) ||
    (kept['happenedOn'] !== null && typeof kept['happenedOn'] !== 'string') ||
    !Array.isArray(kept['rows'])
  )
    return false;
  return kept['rows'].every(
    (row: unknown) =>
      isRecord(row) &&
      isCell(row['plant']) &&
      isCell(row['container']) &&
      isCell(row['place']) &&
      ['lotId', 'units', 'since', 'confinedSince', 'provenance', 'seedZone', 'note'].every(
        (key) => typeof row[key] === 'string',
      ) &&
      typeof row['rootChecked'] === 'boolean' &&
      COUNT_KINDS.some((kind) => kind === row['countKind']) &&
      ['', ...SOURCE_KINDS].some((kind) => kind === row['sourceKind']),
  );
}
