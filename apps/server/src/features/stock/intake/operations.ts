import { receiveBought } from './commands/receive-bought.ts';
import { receiveOpening } from './commands/receive-opening.ts';

export const intakeOperations = { receiveBought, receiveOpening };
