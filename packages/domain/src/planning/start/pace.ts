import { requireShare } from '../../kernel/input.ts';
import type { ProtocolPlan } from '../../propagation/protocol/stages.ts';

/** Below this confidence a plan trusts the usual durations; from SLOW_FROM on the long ones, which nine of ten batches keep. */
export const USUAL_BELOW = 0.75;
export const SLOW_FROM = 0.9;

/**
 * The plan whose usual durations are those a confidence (0 to 1) asks to be reckoned with: the usual ones below 0.75, the long ones from 0.9 on, and
 * in between as far on the way from one to the other, in whole days rounded up. Short and long durations stay. The bounds are this product's own
 * convention: a duration that half of all batches keep, and one that nine of ten keep. Throws InputError for a confidence outside 0 to 1.
 */
export function pacedFor(plan: ProtocolPlan, confidence: number): ProtocolPlan {
  const way = Math.min(
    1,
    Math.max(0, (requireShare('confidence', confidence) - USUAL_BELOW) / (SLOW_FROM - USUAL_BELOW)),
  );
  if (way === 0) return plan;
  return {
    ...plan,
    stages: plan.stages.map((stage) => ({
      ...stage,
      usualDays: Math.ceil(stage.usualDays + way * (stage.longDays - stage.usualDays)),
    })),
  };
}
