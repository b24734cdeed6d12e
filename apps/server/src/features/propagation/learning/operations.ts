import { setLearning } from './commands/set-learning.ts';
import { readPlantRecord } from './read-plant-record.ts';
import { readRecord } from './read-record.ts';

export const learningOperations = { readPlantRecord, readRecord, setLearning };
