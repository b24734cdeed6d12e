import cookie from '@fastify/cookie';
import type { FastifyInstance, FastifyReply, FastifyRequest } from 'fastify';
import type { Database } from '../db/pool.ts';
import { callerOf } from '../features/people/door/sessions.ts';
import type { Door } from '../trpc/door.ts';
import type { Caller } from '../trpc/operation.ts';
import { doorOf, sessionTokenOf } from './cookies.ts';

interface SessionParts {
  database: Database;
  clock: () => Date;
  /** Cookies over https alone. */
  secure: boolean;
}

/** Who asks, by the cookies that a browser sends, and the door at which they are given. */
export interface Sessions {
  callerOf(request: FastifyRequest): Promise<Caller | null>;
  doorOf(request: FastifyRequest, reply: FastifyReply): Door;
}

export async function keepSessions(app: FastifyInstance, { database, clock, secure }: SessionParts): Promise<Sessions> {
  await app.register(cookie);
  return {
    callerOf: (request) => callerOf(database, sessionTokenOf(request, secure), clock()),
    doorOf: (request, reply) => doorOf(request, reply, secure),
  };
}
