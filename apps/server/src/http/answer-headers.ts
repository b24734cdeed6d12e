import type { FastifyInstance } from 'fastify';
import type { Caller } from '../trpc/operation.ts';

/** The instant of the answer in milliseconds, by which a browser checks the clock of its device. */
const NOW = 'rootclock-now';
/** Whose session the answer was made for, empty for nobody: a tab that works for another person must not show it. */
const PERSON = 'rootclock-person';

/** Lets every answer, faults and pages included, carry the server's instant. */
export function stampAnswers(app: FastifyInstance, clock: () => Date): void {
  app.addHook('onSend', async (_request, reply) => {
    reply.header(NOW, String(clock().getTime()));
  });
}

export const namePerson = (reply: { header(name: string, value: string): unknown }, caller: Caller | null): void => {
  reply.header(PERSON, caller?.personId ?? '');
};
