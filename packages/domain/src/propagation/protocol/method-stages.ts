import { requireOneOf } from '../../kernel/input.ts';
import { PROPAGATION_METHODS, type PropagationMethod } from '../words.ts';
import { STAGE_KINDS, type StageKind } from './stages.ts';

const ONLY_SEED: readonly StageKind[] = ['scarification', 'sowing'];
const NEVER_SEED: readonly StageKind[] = ['sticking', 'rooting'];

/**
 * The stages a protocol of the method may name, in their order. Pieces are stuck and root; seed is scarified, sown and comes up. Pieces may
 * stand cold and moist as well, as stored roots and rhizomes do. Throws InputError for a method that is none.
 */
export function stagesForMethod(method: PropagationMethod): readonly StageKind[] {
  const barred = requireOneOf('method', method, PROPAGATION_METHODS) === 'seed' ? NEVER_SEED : ONLY_SEED;
  return STAGE_KINDS.filter((kind) => !barred.includes(kind));
}
