import * as z from 'zod/mini';
import { asRead, id, longText, shortText, units } from '../fields.ts';

const components = z
  .array(z.strictObject({ plantId: id, containerId: id, units }))
  .check(z.minLength(1), z.maxLength(30));

const kit = { kitId: id, name: shortText, note: z._default(longText, ''), components };

export const addKit = z.strictObject(kit);

/** Lines that were made with the kit before keep what they ask for. */
export const editKit = z.strictObject({ ...kit, ...asRead });

export const retireKit = z.strictObject({ kitId: id });

export const listKits = z.strictObject({});

/** Adds a line for each component of so many kits, in the components' order; `lineIds` has an id for each. */
export const addKitLines = z.strictObject({
  orderId: id,
  kitId: id,
  units,
  bedId: z._default(z.nullable(id), null),
  lineIds: z.array(id).check(z.minLength(1), z.maxLength(30)),
});

export interface KitComponentRow {
  plantId: string;
  scientificName: string;
  containerId: string;
  containerCode: string;
  containerName: string;
  /** Of the container, where it is a tray: then it comes in whole trays. */
  cells: number | null;
  /** For one kit. */
  units: number;
}

export interface KitRow {
  id: string;
  edition: number;
  name: string;
  note: string;
  /** By plant, then by container. */
  components: KitComponentRow[];
}
