import { randomUUID } from 'node:crypto';
import { stock } from '@rootclock/contracts';
import { FIELD, lotAt, moved, type MovementDraft, outside, recount } from '@rootclock/domain';
import type * as z from 'zod/mini';
import { found, refuse } from '../../../../refusal.ts';
import { command, type CommandContext } from '../../../../trpc/operation.ts';
import { postEntry, requireSince } from '../../ledger/post.ts';
import { askIfDormant } from '../../lots/leaving/looks-dead.ts';
import { type LotFacts, loadLots, loadPlaces, type PlaceFacts } from '../../lots/store.ts';
import { springCount } from '../../reversal/details.ts';
import { insertSpringCounts } from '../store.ts';

type Count = z.output<typeof stock.countSpring>['counts'][number];

interface Counted extends Count {
  lot: LotFacts;
  place: PlaceFacts;
  standing: number;
  counted: number;
}

async function lookUp(context: CommandContext, counts: readonly Count[]): Promise<Counted[]> {
  const lots = new Map(
    (await loadLots(context, [...new Set(counts.map(({ lotId }) => lotId))], 'counts')).map((lot) => [lot.id, lot]),
  );
  const places = new Map(
    (await loadPlaces(context, [...new Set(counts.map(({ placeId }) => placeId))], 'counts')).map((place) => [
      place.id,
      place,
    ]),
  );
  return counts.map((count) => {
    const lot = found(lots.get(count.lotId), 'lot', 'counts');
    const place = found(places.get(count.placeId), 'place', 'counts');
    const standing = lot.balances.find(({ placeId }) => placeId === count.placeId)?.units ?? 0;
    return { ...count, lot, place, standing, counted: count.upUnits + count.deadUnits + count.notUpUnits };
  });
}

/** What is more than stood there came up unbooked, what is less is gone: both first, so that the dead are taken from what was really there. */
function movementsOf({ lot, placeId, standing, counted, deadUnits }: Counted): MovementDraft[] {
  const here = lotAt(lot.id, placeId);
  const difference = recount(standing, counted);
  return [
    ...(difference.kind === 'found' ? [moved(difference.units, outside('found'), here)] : []),
    ...(difference.kind === 'unexplained' ? [moved(difference.units, here, outside('unexplained'))] : []),
    ...(deadUnits > 0 ? [moved(deadUnits, here, outside('lost'))] : []),
  ];
}

/**
 * What lives after winter: up, dead and not yet up must together be what stands there. The dead leave as lost to winter; what has not come up stays on
 * hand. A difference is told with its numbers and booked only when that was asked for, since in spring it is mostly a slip of counting.
 */
export const countSpring = command({
  name: 'countSpring',
  input: stock.countSpring,
  roles: FIELD,
  run: async (context, { counts, happenedOn, note, bookDifferences, confirmed }) => {
    const counted = await lookUp(context, counts);
    for (const { lot } of counted) requireSince(happenedOn, lot.pottedOn);
    const differing = counted.filter((count) => count.counted !== count.standing);
    if (differing.length > 0 && !bookDifferences) {
      refuse(
        'spring-count-differs',
        {
          lots: differing.map(({ lot, place, standing, counted: sum }) => ({
            lotId: lot.id,
            lot: lot.code,
            placeId: place.id,
            place: place.code,
            standing,
            counted: sum,
          })),
        },
        'counts',
      );
    }
    const dead = counted.filter(({ deadUnits }) => deadUnits > 0);
    askIfDormant(
      dead.map(({ lot }) => lot),
      { cause: 'looks-dead', happenedOn, confirmed },
      'counts',
    );
    const lots = new Map(counted.map(({ lot }) => [lot.id, lot]));
    const entryId = await postEntry(
      context,
      {
        kind: 'count',
        happenedOn,
        note,
        cause: dead.length > 0 ? 'winter' : null,
        subjects: [...lots.keys()].map((id) => ({ kind: 'lot', id })),
        details: springCount.written({
          countKinds: Object.fromEntries([...lots.values()].map(({ id, countKind }) => [id, countKind])),
        }),
      },
      counted.flatMap(movementsOf),
    );
    await insertSpringCounts(
      context,
      entryId,
      happenedOn,
      counted.map(({ lotId, placeId, upUnits, deadUnits, notUpUnits }) => ({
        id: randomUUID(),
        lotId,
        placeId,
        upUnits,
        deadUnits,
        notUpUnits,
      })),
    );
    const sum = (of: 'upUnits' | 'deadUnits' | 'notUpUnits') => counted.reduce((units, count) => units + count[of], 0);
    return {
      entryId,
      lots: lots.size,
      upUnits: sum('upUnits'),
      deadUnits: sum('deadUnits'),
      notUpUnits: sum('notUpUnits'),
    };
  },
});
