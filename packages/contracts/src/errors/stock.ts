import { errorKind } from './kind.ts';

export const stockErrors = {
  /** Fewer units are there than were asked for; the sentence names both numbers. */
  'not-enough-units': errorKind<{ wanted: number; available: number; of: string }>('refusal', 409),
  /** The lot stands in several places and only the grower knows which plants are meant. */
  'which-place': errorKind<{ of: string; places: { placeId: string; code: string; units: number }[] }>('refusal', 422),
  'lot-held': errorKind<{ lot: string; reasons: string[] }>('refusal', 409),
  'place-closed': errorKind<{ place: string; until: string; reason: string }>('refusal', 409),
  'already-reversed': errorKind<{ kind: string }>('refusal', 409),
  'reversal-is-final': errorKind('refusal', 409),
  /** The units of the entry have moved on since; these later entries must be reversed first. */
  'units-have-gone': errorKind<{ later: { entryId: string; kind: string; happenedOn: string }[] }>('refusal', 409),
  'cannot-reverse': errorKind<{ kind: string }>('refusal', 409),
  /** The plant may only be dormant: sent again with `confirmed` it is recorded. */
  'may-be-dormant': errorKind<{ plant: string; lastEmergenceMd: string | null }>('refusal', 422),
} as const;
