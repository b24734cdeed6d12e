import type { CommandContext } from '../../trpc/operation.ts';
import { nextCodes } from './codes-store.ts';

export interface CodeWanted {
  plantCode: string;
  year: number;
}

/** A code for each, in the order asked for; numbers of one plant and year are drawn in one go. */
export async function assignCodes(context: CommandContext, wanted: readonly CodeWanted[]): Promise<string[]> {
  const groups = new Map<string, number[]>();
  wanted.forEach(({ plantCode, year }, index) => {
    const key = `${plantCode}/${year}`;
    groups.set(key, [...(groups.get(key) ?? []), index]);
  });
  const codes = wanted.map(() => '');
  for (const indexes of groups.values()) {
    const first = wanted[indexes[0] ?? 0];
    if (!first) continue;
    const drawn = await nextCodes(context, first.plantCode, first.year, indexes.length);
    indexes.forEach((index, nth) => (codes[index] = drawn[nth] ?? ''));
  }
  return codes;
}
