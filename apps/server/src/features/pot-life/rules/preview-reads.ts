import { potLife } from '@rootclock/contracts';
import { daysBetween, EVERYONE, type PlantByState } from '@rootclock/domain';
import * as z from 'zod/mini';
import { query, type ReadContext } from '../../../trpc/operation.ts';
import { type ClockSubject, loadClockRules, loadClockSubjects } from '../clocks-store.ts';
import { reckon } from '../reckon-clocks.ts';
import { changedRules } from './changed-rules.ts';

const MOST_EXAMPLES = 6;
/** A lot without a plant-by day counts as due in the far future, so that gaining one is the largest move of all. */
const NEVER = '9999-12-31';

interface Move {
  subject: ClockSubject;
  fromOn: string | null;
  toOn: string | null;
  toState: PlantByState;
  /** Days lost, negative when won. */
  lost: number;
}

const namedRow = z.strictObject({ id: z.string(), code: z.string(), scientificName: z.string() });

async function named({ tx, nurseryId }: ReadContext, moves: readonly Move[]): Promise<potLife.MovedSubject[]> {
  const ids = moves.map(({ subject }) => subject.id);
  const rows = await tx.rows(namedRow)`
    SELECT s.id::text, s.code, p.scientific_name AS "scientificName"
      FROM (SELECT id, code, plant_id FROM lot_named WHERE nursery_id = ${nurseryId}::uuid AND id = ANY (${ids}::uuid[])
            UNION ALL SELECT id, code, plant_id FROM batch_named WHERE nursery_id = ${nurseryId}::uuid AND id = ANY (${ids}::uuid[])) s
      JOIN plant_named p ON p.nursery_id = ${nurseryId}::uuid AND p.id = s.plant_id`;
  const byId = new Map(rows.map((row) => [row.id, row]));
  return moves.map(({ subject, fromOn, toOn, toState }) => ({
    kind: subject.kind,
    id: subject.id,
    code: byId.get(subject.id)?.code ?? '',
    scientificName: byId.get(subject.id)?.scientificName ?? '',
    fromOn,
    toOn,
    toState,
  }));
}

/** What a change of rules, windows or the freeze day would do to what stands in pots. Nothing is written. */
export const previewChange = query({
  name: 'previewChange',
  isHeavy: true,
  input: potLife.previewChange,
  roles: EVERYONE,
  read: async (context, { change }): Promise<potLife.ChangePreview> => {
    const rules = changedRules(await loadClockRules(context), change);
    const subjects = await loadClockSubjects(context, 'all-open');
    const moves = subjects.flatMap((subject): Move[] => {
      const { plantByOn: toOn, state: toState } = reckon(subject, rules, context.today).result;
      const fromOn = subject.stored.plantByOn;
      return fromOn === toOn
        ? []
        : [{ subject, fromOn, toOn, toState, lost: daysBetween(toOn ?? NEVER, fromOn ?? NEVER) }];
    });
    moves.sort((a, b) => b.lost - a.lost || (a.subject.id < b.subject.id ? -1 : 1));
    const isPast = (on: string | null) => on !== null && on < context.today;
    return {
      open: subjects.length,
      earlier: moves.filter(({ lost }) => lost > 0).length,
      later: moves.filter(({ lost }) => lost < 0).length,
      nowPast: moves.filter(({ fromOn, toOn }) => isPast(toOn) && !isPast(fromOn)).length,
      examples: await named(context, moves.slice(0, MOST_EXAMPLES)),
    };
  },
});
