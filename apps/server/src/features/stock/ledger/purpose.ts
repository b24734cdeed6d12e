import type { EntryKind } from '@rootclock/domain';
import * as z from 'zod/mini';

/**
 * What entries of one kind keep for one purpose, beside their movements, so that they can be taken back. The same schema writes and reads it.
 */
export interface Purpose<Details> {
  written(details: Details): Record<string, unknown>;
  /** The details of an entry that was made for this purpose; undefined for any other. Throws where they are not what is written for it. */
  read(entry: { kind: EntryKind; details: Record<string, unknown> }): Details | undefined;
}

/**
 * Entries name their purpose. Those from before they did are this one's if they are of its kind and fit its schema, so purposes of one kind must
 * each ask for a field that the others do not have.
 */
export function purposeOf<Schema extends z.ZodMiniObject>(
  kinds: readonly EntryKind[],
  name: string,
  schema: Schema,
): Purpose<z.output<Schema>> {
  return {
    written: (details) => ({ purpose: name, ...z.parse(schema, details) }),
    read: ({ kind, details }) => {
      if (!kinds.includes(kind)) return undefined;
      if (details['purpose'] === undefined) return z.safeParse(schema, details).data;
      return details['purpose'] === name ? z.parse(schema, details) : undefined;
    },
  };
}
