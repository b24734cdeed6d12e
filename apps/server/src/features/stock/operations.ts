import { loseFromLot } from './lots/commands/lose-from-lot.ts';

export const stockOperations = { loseFromLot };
