import { promises } from '@rootclock/contracts';
import { EVERYONE } from '@rootclock/domain';
import { queryThen, type ReadContext } from '../../../trpc/operation.ts';
import { solver } from '../solving/solver.ts';
import { answerWhatIf } from './answer-what-if.ts';
import { addLine, editLine, withdrawLine } from './line-trials.ts';
import { addOrder, cancelOrder, moveOrder, turnToNatives } from './order-trials.ts';
import { pin, release, unpin } from './reservation-trials.ts';
import { changeBatch, loseBatch, loseLot } from './stock-trials.ts';
import type { Change, Trial, TurnTrial } from './trial.ts';

/** What a change would do to every order that shares plants with it, worked out and not stored. */
export const whatIf = queryThen({
  name: 'whatIf',
  isHeavy: true,
  input: promises.whatIf,
  roles: EVERYONE,
  read: trialOf,
  after: (trial): Promise<promises.WhatIf> => solver.reckon('whatIf', trial.before, trial, answerWhatIf),
});

function trialOf(context: ReadContext, change: Change): Promise<Trial | TurnTrial> {
  switch (change.kind) {
    case 'move-order':
      return moveOrder(context, change);
    case 'cancel-order':
      return cancelOrder(context, change);
    case 'add-order':
      return addOrder(context, change);
    case 'lose-lot':
      return loseLot(context, change);
    case 'lose-batch':
      return loseBatch(context, change);
    case 'change-batch':
      return changeBatch(context, change);
    case 'edit-line':
      return editLine(context, change);
    case 'withdraw-line':
      return withdrawLine(context, change);
    case 'add-line':
      return addLine(context, change);
    case 'pin':
      return pin(context, change);
    case 'unpin':
      return unpin(context, change);
    case 'release':
      return release(context, change);
    case 'natives-only':
      return turnToNatives(context, change);
  }
}
