import { refuse } from '../../../refusal.ts';
import { setPlants } from '../lots/changing/store.ts';
import { setCountKind, setReadiness } from '../lots/looking-store.ts';
import { reopenPlaces, touchDescent } from '../treatments/store.ts';
import { springCountUndo } from '../winter/undo.ts';
import { lotCount, placeClosing, placeOpening, reIdentification, rootBallCheck, treatment } from './details.ts';
import { endHoldsOf, findLaterOfKind, loadArrival, loadChecks, openPlacesClosedUntil, reopenHoldsOf } from './store.ts';
import type { Undo } from './undo.ts';

/** Any entry may have opened holds: a hold, a treatment, plants that came in under quarantine, lots that took a hold over. */
const holds: Undo = {
  kinds: 'every',
  undo: (context, entry) => endHoldsOf(context, { entryId: context.commandId, reversesId: entry.id }),
};

const releases: Undo = { kinds: ['release'], undo: (context, entry) => reopenHoldsOf(context, entry.id) };

const treatments: Undo = {
  kinds: ['treat'],
  undo: async (context, entry) => {
    await reopenPlaces(context, entry.id, treatment.read(entry)?.closings ?? []);
    await touchDescent(
      context,
      entry.subjects.flatMap(({ kind, id }) => (kind === 'lot' || kind === 'batch' ? [id] : [])),
    );
  },
};

/** The last check that stands decides again; with none left the lot is what it was before the first. */
const rootChecks: Undo = {
  kinds: ['observe'],
  undo: async (context, entry) => {
    const undone: { lotId: string; readyOn: string | null; rootCheckedOn: string | null }[] = [];
    for (const { lotId } of rootBallCheck.read(entry)?.checks ?? []) {
      const checks = (await loadChecks(context, lotId)).flatMap(({ reversed, ...looked }) =>
        (rootBallCheck.read(looked)?.checks ?? [])
          .filter((check) => check.lotId === lotId)
          .map((check) => ({ ...check, reversed })),
      );
      const first = checks.at(-1);
      const standing =
        checks.find((check) => !check.reversed)?.after ??
        (first && { ...first.before, readyOn: first.before.readyOn ?? (await loadArrival(context, lotId)) });
      if (standing) undone.push({ lotId, ...standing });
    }
    if (undone.length > 0) await setReadiness(context, undone);
  },
};

const counts: Undo = {
  kinds: ['count'],
  undo: async (context, entry) => {
    const counted = lotCount.read(entry);
    const lot = entry.subjects.find(({ kind }) => kind === 'lot');
    const later = await findLaterOfKind(context, entry);
    if (lot && counted && later.length === 0) await setCountKind(context, lot.id, counted.before.countKind);
  },
};

/** Names go back one by one, so one that was changed again since must be taken back first. */
const identities: Undo = {
  kinds: ['re-identify'],
  undo: async (context, entry) => {
    const later = await findLaterOfKind(context, entry);
    if (later.length > 0) refuse('units-have-gone', { later }, 'entryId');
    await setPlants(context, reIdentification.read(entry)?.from ?? []);
  },
};

/** A place that somebody closed opens again. One that was opened is closed anew instead, since by now people may be in it. */
const placeClosings: Undo = {
  kinds: ['observe'],
  undo: async (context, entry) => {
    if (placeOpening.read(entry)) refuse('cannot-reverse', { kind: entry.kind }, 'entryId');
    const closed = placeClosing.read(entry);
    if (closed)
      await openPlacesClosedUntil(
        context,
        entry.subjects.map(({ id }) => id),
        closed.untilAt,
      );
  },
};

export const stockUndos: readonly Undo[] = [
  holds,
  releases,
  treatments,
  rootChecks,
  counts,
  springCountUndo,
  identities,
  placeClosings,
];
