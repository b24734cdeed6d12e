// What runs in the worker thread that solves large instances.
import { allocate, type AllocationInstance, type Assignment } from '@rootclock/domain';
import { answerQuestions } from '../../../../thread/answering.ts';

answerQuestions((instance: AllocationInstance): Assignment[] => allocate(instance).assignments);
