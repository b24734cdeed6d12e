import { randomUUID } from 'node:crypto';
import type { operations } from '../../../apps/server/src/features/operations.ts';
import type { BodyOf, Operation } from '../../../apps/server/src/trpc/operation.ts';
import type { SampleRows } from './rows.ts';

/**
 * Rows to name in a body, and ids for what it makes. A made id is a new one, or where the test wants it so one that another nursery
 * uses already: for this nursery it is as good.
 */
export interface SampleIds extends SampleRows {
  made(what: MadeId): string;
}

export type MadeId =
  | 'personId'
  | 'plantId'
  | 'nameId'
  | 'containerId'
  | 'placeId'
  | 'sourceId'
  | 'lotId'
  | 'batchId'
  | 'ruleId'
  | 'kitId'
  | 'windowId'
  | 'clientId'
  | 'siteId'
  | 'bedId'
  | 'orderId'
  | 'lineId'
  | 'demandId'
  | 'testId'
  | 'attachmentId'
  | 'protocolId'
  | 'versionId';

export const withNewIds = (rows: SampleRows): SampleIds => ({ ...rows, made: () => randomUUID() });

/** The rows of one nursery, with the ids of another's for all that is made, but for people: they are the whole server's. */
export function withIdsOf(rows: SampleRows, other: SampleRows): SampleIds {
  const used = new Set<string>();
  return {
    ...rows,
    made: (what) => {
      const id = what === 'personId' || used.has(other[what]) ? randomUUID() : other[what];
      used.add(id);
      return id;
    },
  };
}

type Operations = typeof operations;

/**
 * Bodies of one feature, each of which its operation accepts, naming every id that it may name. An operation without one does not
 * compile. What only says how much shortening was accepted is left out, since ids in it are compared and never looked up.
 */
export type SampleBodies<Feature extends keyof Operations> = {
  [Name in keyof Operations[Feature]]: (
    ids: SampleIds,
  ) => Operations[Feature][Name] extends infer Op extends { input: Operation['input'] } ? BodyOf<Op>[] : never;
};
