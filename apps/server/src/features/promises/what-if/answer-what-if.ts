import type { promises } from '@rootclock/contracts';
import { difference } from './difference.ts';
import type { Trial, TurnTrial } from './trial.ts';
import { inTurn } from './turn-trial.ts';

export const answerWhatIf = (trial: Trial | TurnTrial): promises.WhatIf =>
  difference('changes' in trial ? inTurn(trial) : trial);
