// What runs in the worker thread that reckons plans.
import { type PlanFacts, productionPlan } from '@rootclock/domain';
import { answerQuestions } from '../../../../thread/answering.ts';
import { createSolver } from './highs.ts';

const solver = await createSolver();
answerQuestions((facts: PlanFacts) => productionPlan(facts, solver));
