import type { FastifyReply, FastifyRequest } from 'fastify';
import type { Door } from '../trpc/door.ts';

/** A name with the prefix is taken by browsers only over https, for the whole host, and from that host alone. */
const named = (name: string, secure: boolean) => (secure ? `__Host-${name}` : name);

/** The session that a request brought, null without one. */
export const sessionTokenOf = (request: FastifyRequest, secure: boolean): string | null =>
  request.cookies[named('rootclock_session', secure)] ?? null;

/** 256 random bits as base64url: anything else was not set by this server. */
const SECRET = /^[\w-]{43}$/;

/** The cookies of one request and its answer. */
export function doorOf(request: FastifyRequest, reply: FastifyReply, secure: boolean): Door {
  const session = named('rootclock_session', secure);
  const device = named('rootclock_device', secure);
  const options = { httpOnly: true, sameSite: 'lax', secure, path: '/' } as const;
  const deviceSecret = request.cookies[device] ?? '';
  return {
    sessionToken: sessionTokenOf(request, secure),
    deviceSecret: SECRET.test(deviceSecret) ? deviceSecret : null,
    agent: request.headers['user-agent'] ?? '',
    open: (opened) => {
      reply.setCookie(session, opened.token, { ...options, maxAge: opened.seconds });
      reply.setCookie(device, opened.device, { ...options, maxAge: opened.deviceSeconds });
    },
    close: () => void reply.clearCookie(session, options),
    note: (event) => request.log.warn(event, event.event),
  };
}
