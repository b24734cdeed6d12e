/**
 * BulkActions: what can be done with any selection of lots, or with all that stands at a place, each in one entry that can be taken
 * back. With `placeId` and no lots the whole place is meant; with both, only what those lots have there.
 */
import { FIELD, GROWERS } from '@rootclock/domain';
import { useState } from 'react';
import { useSession } from '../../../lib/api/index.ts';
import { useMessages } from '../../../messages/index.ts';
import { Button, Menu } from '../../../ui/action/index.ts';
import { HoldSheet } from './bulk/hold-sheet.tsx';
import { LoseManySheet } from './bulk/lose-many-sheet.tsx';
import { MergeSheet } from './bulk/merge-sheet.tsx';
import { MoveManySheet } from './bulk/move-many-sheet.tsx';
import { ObserveSheet } from './bulk/observe-sheet.tsx';
import { TreatSheet } from './bulk/treat-sheet.tsx';
import type { Target } from './lot-data.ts';

export interface BulkActionsProps {
  lotIds: readonly string[];
  placeId?: string;
  onDone: () => void;
}

const SHEETS = {
  move: MoveManySheet,
  lose: LoseManySheet,
  treat: TreatSheet,
  hold: HoldSheet,
  observe: ObserveSheet,
  merge: MergeSheet,
};
type Work = keyof typeof SHEETS;

export function BulkActions({ lotIds, placeId, onDone }: BulkActionsProps) {
  const { actions, bulk } = useMessages().lots;
  const { mayBe } = useSession();
  const [work, setWork] = useState<Work | null>(null);
  if (!mayBe(FIELD)) return null;
  const target: Target = {
    ...(lotIds.length > 0 ? { lotIds: [...lotIds] } : {}),
    ...(placeId ? { placeId } : {}),
    name: lotIds.length > 0 ? bulk.of(lotIds.length) : bulk.wholePlace,
  };
  const more = (['observe', 'hold', 'merge'] as const).filter((each) =>
    each === 'hold' ? mayBe(GROWERS) : each === 'merge' ? lotIds.length > 1 : true,
  );
  const Open = work && SHEETS[work];
  return (
    <>
      <Button onClick={() => setWork('move')}>{bulk.move}</Button>
      <Button onClick={() => setWork('lose')}>{bulk.lose}</Button>
      <Button onClick={() => setWork('treat')}>{bulk.treat}</Button>
      <Menu
        label={actions.more}
        actions={more.map((each) => ({ id: each, label: bulk[each], onAction: () => setWork(each) }))}
      />
      {Open && (
        <Open
          target={target}
          onClose={() => setWork(null)}
          onDone={() => {
            setWork(null);
            onDone();
          }}
        />
      )}
    </>
  );
}
