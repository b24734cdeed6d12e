import * as z from 'zod/mini';
import { id, text } from '../fields.ts';

const name = text(z.trim(), z.minLength(2), z.maxLength(160));

/** A synonym is scientific; a common name may be any, and may be another plant's too. */
export const PLANT_NAME_KINDS = ['synonym', 'common'] as const;
export const addPlantName = z.strictObject({ nameId: id, plantId: id, kind: z.enum(PLANT_NAME_KINDS), name });
export const removePlantName = z.strictObject({ nameId: id });

/** What a written name means, and what it may be the beginning of. */
export const findPlant = z.strictObject({ text: text(z.trim(), z.minLength(1), z.maxLength(160)) });
