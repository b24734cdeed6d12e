import type { GardenStory } from '../../../support/gardens.ts';
import type { TestNursery } from '../../../support/nursery.ts';

/** Work that sets the scene, and then answers the edits: each must leave stored what a plan made anew would store, and each changes what is stored. */
export type Edit = (nursery: TestNursery, story: GardenStory) => Promise<(() => Promise<unknown>)[]>;

/** A column of the setting, written as the owner. */
export const set = ({ sql, nurseryId }: TestNursery, table: 'source' | 'plant' | 'site' | 'client', columns: string) =>
  sql(`UPDATE ${table} SET ${columns} WHERE nursery_id = $1`, [nurseryId]);
