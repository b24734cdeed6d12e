import { planReservations } from '../allocation/plan.ts';
import { answerCheck } from '../check/answer-check.ts';
import { answerKits } from '../orders/answer-kits.ts';
import { answerWhatIf } from '../what-if/answer-what-if.ts';

/** Everything about promises that takes long where lines share much, by name: each a pure function of what was read. */
export const reckonings = {
  plan: planReservations,
  check: answerCheck,
  kits: answerKits,
  whatIf: answerWhatIf,
};
export type Reckonings = typeof reckonings;

/** One of them with what it is asked, as it goes to a thread. */
export type Reckoning = {
  [Name in keyof Reckonings]: { name: Name; asked: Parameters<Reckonings[Name]>[0] };
}[keyof Reckonings];
