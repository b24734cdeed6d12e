import type { Ledger, ModelBooking } from './ledger.ts';
import { chosen, type Planner } from './step.ts';
import { TODAY } from './world.ts';

const day = { happenedOn: TODAY };

/** Books what was answered: the server names the booking, and only by that name it can be taken back. */
const booked = (grams: number) => {
  const booking: ModelBooking = { movementId: null, grams, isTakenBack: false };
  return {
    keep: async (answer: Promise<{ movementId: string | null }>) => {
      booking.movementId = (await answer).movementId;
    },
    apply: (model: Ledger) => model.bookSeed(booking),
  };
};

export const putIn: Planner<{ grams: number }> = (_, { grams }) => {
  const { keep, apply } = booked(grams);
  return {
    refusals: [],
    send: ({ procedures, sent, sourceId }, commandId) =>
      keep(procedures.sources.receiveSeed(sent({ ...day, sourceId, kind: 'bought' as const, grams }, commandId))),
    apply,
    concerns: [],
  };
};

export const takeOut: Planner<{ grams: number }> = (ledger, { grams }) => {
  const { keep, apply } = booked(-grams);
  return {
    refusals: ledger.seedGrams === 0 ? ['no-seed-stored'] : grams > ledger.seedGrams ? ['more-seed-than-stored'] : [],
    send: ({ procedures, sent, sourceId }, commandId) =>
      keep(procedures.sources.takeSeed(sent({ ...day, sourceId, reason: 'given' as const, grams }, commandId))),
    apply,
    concerns: [],
  };
};

export const weighOut: Planner<{ grams: number }> = (ledger, { grams }) => {
  const { keep, apply } = booked(grams - ledger.seedGrams);
  return {
    refusals: [],
    send: ({ procedures, sent, sourceId }, commandId) =>
      keep(procedures.sources.weighSeed(sent({ ...day, sourceId, grams }, commandId))),
    apply,
    concerns: [],
  };
};

export const takeSeedBack: Planner<{ booking: number }> = (ledger, { booking: number }) => {
  // The last one first: it is what people take back.
  const booking = chosen([...ledger.bookings].reverse(), number);
  if (!booking) return null;
  return {
    refusals: booking.isTakenBack ? ['already-reversed'] : booking.grams > ledger.seedGrams ? ['seed-has-gone'] : [],
    send: ({ procedures, sent }, commandId) =>
      procedures.sources.takeBackSeed(sent({ movementId: booking.movementId ?? '' }, commandId)),
    apply: (model) => model.takeSeedBack(booking),
    concerns: [],
  };
};
