import { errorKind } from './kind.ts';

export const stockErrors = {
  /** Fewer units are there than were asked for; the sentence names both numbers. */
  /** What was counted in spring does not sum to what stands there; sent again with `bookDifferences` it is recorded. */
  'spring-count-differs': errorKind<{
    lots: { lotId: string; lot: string; placeId: string; place: string; standing: number; counted: number }[];
  }>('refusal', 422),
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
  /** Only plants of one plant, source and container share a lot. */
  'lots-differ': errorKind<{ lots: string[]; in: ('plant' | 'source' | 'container')[] }>('refusal', 409),
  /** Nothing stands there that the command could work on. */
  'nothing-there': errorKind<{ of: string }>('refusal', 409),
  'already-held': errorKind<{ lot: string; reason: string }>('refusal', 409),
  'not-held': errorKind<{ lot: string; reason: string }>('refusal', 409),
  'already-that-plant': errorKind<{ of: string; plant: string }>('refusal', 409),
  /** Plants in the ground are lifted, not potted up, and only they can be lifted. */
  'stands-in-ground': errorKind<{ lot: string }>('refusal', 409),
  'not-in-ground': errorKind<{ lot: string }>('refusal', 409),
  'not-a-nursery-bed': errorKind<{ place: string; kind: string }>('refusal', 409),
  /** A pot in the one case, the ground in the other. */
  'wrong-container': errorKind<{ container: string; kind: string; needs: 'pot' | 'ground' }>('refusal', 409),
} as const;
