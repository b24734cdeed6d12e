import { type CountKind, type IntakeClocks, type IntakeForm, lotAt, moved, outside } from '@rootclock/domain';
import type { CommandContext } from '../../../trpc/operation.ts';
import { assignCodes } from '../../sources/assign-codes.ts';
import type { SourceSettled } from '../../sources/settle.ts';
import { postMovements } from '../ledger/post.ts';
import { insertLots } from '../lots/store.ts';
import type { RowGround } from './look-up.ts';
import { insertIntakes } from './store.ts';

/** One lot that comes in, with all that was looked up and reckoned for it. */
export interface Incoming {
  lotId: string;
  units: number;
  countKind: CountKind;
  rootChecked: boolean;
  note: string;
  form: IntakeForm;
  invoicedUnits: number | null;
  sownOn: string | null;
  about: RowGround;
  source: SourceSettled;
  clocks: IntakeClocks;
}

const standing = (assumed: boolean) => (assumed ? ('assumed' as const) : ('recorded' as const));

/** Makes the lots under an entry that stands, keeps how they came, and brings their units in. Answers each lot with its code, in order. */
export async function takeIn(
  context: CommandContext,
  entryId: string,
  { kind, happenedOn }: { kind: 'opening' | 'bought'; happenedOn: string },
  incoming: readonly Incoming[],
) {
  // The year in the code is the year in which the lot's record begins: what has stood since 2024 is found among the lots of 2024.
  const codes = await assignCodes(
    context,
    incoming.map(({ about, clocks }) => ({ plantCode: about.plant.code, year: Number(clocks.pottedOn.slice(0, 4)) })),
  );
  await insertLots(
    context,
    entryId,
    incoming.map(({ lotId, about, source, clocks, countKind, rootChecked, note }, index) => ({
      id: lotId,
      code: codes[index] ?? '',
      plantId: about.plant.id,
      sourceId: source.id,
      containerId: about.container.id,
      pottedOn: clocks.pottedOn,
      pottedPrecision: clocks.pottedPrecision,
      confinedOn: clocks.confinedOn,
      confinedStanding: standing(clocks.confinedAssumed),
      containerOn: clocks.containerOn,
      containerStanding: standing(clocks.containerAssumed),
      // What came in as it stands is expected to be ready since it stood so, until somebody looks.
      readyOn: rootChecked ? happenedOn : clocks.pottedOn,
      rootCheckedOn: rootChecked ? happenedOn : null,
      countKind,
      note,
    })),
  );
  await insertIntakes(
    context,
    entryId,
    incoming.map(({ lotId, form, clocks, invoicedUnits, units, sownOn }) => ({
      lotId,
      kind,
      form,
      arrivedOn: clocks.pottedOn,
      arrivedPrecision: clocks.pottedPrecision,
      invoicedUnits,
      receivedUnits: units,
      sownOn,
    })),
  );
  await postMovements(
    context,
    entryId,
    incoming.map(({ lotId, units, about }) => moved(units, outside(kind), lotAt(lotId, about.place.id))),
  );
  return incoming.map(({ lotId, source }, index) => ({
    lotId,
    code: codes[index] ?? '',
    sourceId: source.id,
    sourceCode: source.code,
  }));
}
