import type { LiveWord } from '@rootclock/contracts';
import { refuse } from '../refusal.ts';
import { toTrpcError } from '../trpc/answer-error.ts';
import { signedIn, t } from '../trpc/procedures.ts';

/** What browsers hear without asking: that something changed, so that they read it again. */
export const liveRouter = t.router({
  hearChanges: t.procedure.subscription(async function* ({ ctx }): AsyncGenerator<LiveWord, void> {
    try {
      const caller = signedIn(ctx);
      const { streams, page } = ctx.hearing ?? refuse('not-found', { what: 'procedure' });
      const stream = streams.hear(caller, page);
      try {
        yield* stream.words();
      } finally {
        streams.close(stream);
      }
    } catch (error) {
      throw toTrpcError(error);
    }
  }),
});
