import { setLearning } from './commands/set-learning.ts';
import { readPlantRecord } from './queries/read-plant-record.ts';
import { readRecord } from './queries/read-record.ts';

export const learningOperations = { readPlantRecord, readRecord, setLearning };
