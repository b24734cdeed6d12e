import type { HandlingRule } from '@rootclock/domain';
import { type Fact, memory, practice } from './fact.ts';

/*
 * How a plant is handled is set by species. None of these has a published source; most are what growers do. The words a
 * crew reads belong to the message files, which is why only codes stand here.
 */

type Handling = Fact<HandlingRule>;

export const leaveRootBall: Handling = practice('leave-root-ball-intact', 'a broken taproot can kill the plant');
export const mayLoosen: Handling = practice('may-loosen-root-ball');
export const mayDivide: Handling = practice('may-divide');
export const keepCrownClear: Handling = practice(
  'keep-crown-clear',
  'compost and mulch stay off it: buried crowns smother',
);
export const noCompost: Handling = practice('no-compost', 'a plant of dry ground');
export const noSprayHost: Handling = practice(
  'no-spray-host',
  'caterpillars feed on it: no spray, no soap; aphids are left to their predators',
);
export const keepFromLivestock: Handling = practice('keep-from-livestock', 'not planted beside horses or hay');
export const protectFromBrowse: Handling = memory('protect-from-browse', 'rabbits and deer seek it');
export const wearGloves: Handling = memory('wear-gloves', 'its latex irritates the skin and harms the eye');
