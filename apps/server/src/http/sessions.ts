import cookie from '@fastify/cookie';
import type { FastifyInstance, FastifyReply, FastifyRequest } from 'fastify';
import type { Database } from '../db/pool.ts';
import { callerOf } from '../features/people/sign-in.ts';
import type { Caller } from '../trpc/operation.ts';

const COOKIE = 'rootclock_session';

/** Who asks, by the cookie that a browser sends, and how that cookie is set. */
export interface Sessions {
  tokenOf(request: FastifyRequest): string | null;
  callerOf(request: FastifyRequest): Promise<Caller | null>;
  /** Null ends the session in this browser. */
  set(reply: FastifyReply, token: string | null, expiresAt: Date | null): void;
}

export async function keepSessions(app: FastifyInstance, { database, clock, secure }: { database: Database; clock: () => Date; secure: boolean }): Promise<Sessions> {
  await app.register(cookie);
  const tokenOf = (request: FastifyRequest) => request.cookies[COOKIE] ?? null;
  return {
    tokenOf,
    callerOf: (request) => callerOf(database, tokenOf(request), clock()),
    set: (reply, token, expiresAt) => {
      if (token && expiresAt) reply.setCookie(COOKIE, token, { httpOnly: true, sameSite: 'lax', secure, path: '/', expires: expiresAt });
      else reply.clearCookie(COOKIE, { path: '/' });
    },
  };
}
