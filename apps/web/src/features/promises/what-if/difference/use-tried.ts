/** useTried: what the server says that an edit would do, asked once its typing rests; what is still unfinished is not asked about. */
import { keepPreviousData, useQuery } from '@tanstack/react-query';
import { promises as contracts, readInput } from '@rootclock/contracts';
import { readFailure, trpc, type Failure } from '../../../../lib/api/index.ts';
import { useRested } from '../../../../lib/use-rested.ts';

export type Edit = Exclude<NonNullable<Parameters<typeof trpc.promises.whatIf.queryOptions>[0]>, symbol>;

export interface Tried {
  edit: Edit | null;
  answer: contracts.WhatIf | undefined;
  refused: Failure | null;
  isAsking: boolean;
}

export function useTried(wanted: Edit | null): Tried {
  const read = readInput(contracts.whatIf, wanted);
  const asked = useRested(read.ok ? JSON.stringify(read.data) : '');
  const edit = asked === '' ? null : (JSON.parse(asked) as Edit);
  const query = useQuery({
    ...trpc.promises.whatIf.queryOptions(edit ?? NEVER),
    enabled: edit !== null,
    placeholderData: keepPreviousData,
  });
  const refused = edit && query.isError ? readFailure(query.error) : null;
  return { edit, answer: edit && !refused ? query.data : undefined, refused, isAsking: query.isFetching };
}

/** Stands in for an edit while there is none; it is never sent. */
const NEVER: Edit = { kind: 'withdraw-line', lineId: '' };
