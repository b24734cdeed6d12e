/** What came into the store and left it, the latest first; what is older is folded away. */
import { GROWERS } from '@rootclock/domain';
import { useSession } from '../../../../lib/api/index.ts';
import { useFormat } from '../../../../lib/format/index.ts';
import { paths } from '../../../../lib/paths.ts';
import { useMessages } from '../../../../messages/index.ts';
import { Button, TextLink } from '../../../../ui/action/index.ts';
import { Timeline, type TimelineItem } from '../../../../ui/layout/index.ts';
import type { SourceStory } from '../source-story.ts';
import { useTakeSeedBack } from './use-seed-undo.ts';

type Movement = NonNullable<SourceStory['seed']>['movements'][number];
const AT_ONCE = 6;

export function Movements({ movements, mayBook }: { movements: readonly Movement[]; mayBook: boolean }) {
  const { seed } = useMessages();
  const { dates, measures } = useFormat();
  const { mayBe } = useSession();
  const takeBack = useTakeSeedBack();
  const items = movements.map((movement): TimelineItem => ({
    id: movement.movementId,
    day: dates.short(movement.happenedOn),
    dayOn: movement.happenedOn,
    reversed: movement.takenBack,
    title: (
      <>
        {seed.movements[movement.kind]}{' '}
        <strong>{`${movement.grams > 0 ? '+' : '−'}${measures.seedWeight(Math.abs(movement.grams))}`}</strong>
        {movement.batchId && movement.batchCode && (
          <>
            {' '}
            {seed.forBatch} <TextLink to={paths.batch(movement.batchId)}>{movement.batchCode}</TextLink>
          </>
        )}
        {movement.otherSourceId && movement.otherSourceCode && (
          <>
            {' '}
            {seed.intoBlend} <TextLink to={paths.source(movement.otherSourceId)}>{movement.otherSourceCode}</TextLink>
          </>
        )}
      </>
    ),
    ...(movement.note ? { children: <p>{movement.note}</p> } : {}),
    ...(movement.takenBack ? { note: seed.takenBack } : movement.entryId ? { note: seed.withEntry } : {}),
    ...(mayBook && !movement.takenBack && !movement.entryId && (movement.mine || mayBe(GROWERS))
      ? {
          actions: (
            <Button look="quiet" onClick={() => takeBack(movement.movementId)}>
              {seed.takeBack}
            </Button>
          ),
        }
      : {}),
  }));
  const older = items.slice(AT_ONCE);
  return (
    <>
      <Timeline items={items.slice(0, AT_ONCE)} label={seed.booked} />
      {older.length > 0 && (
        <details className="seed-fold">
          <summary>{seed.bookedOlder(older.length)}</summary>
          <Timeline items={older} label={seed.bookedOlder(older.length)} />
        </details>
      )}
    </>
  );
}
