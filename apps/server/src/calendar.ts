import type { FastifyInstance } from 'fastify';
import type { Database } from './db/pool.ts';
import type { Runner } from './db/runner.ts';
import { calendarHolder } from './features/people/calendar-address.ts';
import { readCalendar } from './features/planning/tasks/calendar/read-calendar.ts';
import { notHere } from './http/failures.ts';

/** 256 random bits as base64url, and the ending that phones know a calendar by. */
const FILE = /^([\w-]{43})\.ics$/;
const KEPT_SECONDS = 900;

/**
 * A person's tasks for a calendar to subscribe to. It works without a session: whoever has the address can read, and nothing else. An address that is
 * unknown and one that was revoked answer alike.
 */
export function serveCalendars(
  app: FastifyInstance,
  { runner, database }: { runner: Runner; database: Database },
): void {
  app.get<{ Params: { file: string }; Querystring: { language?: unknown } }>(
    '/calendar/:file',
    async (request, reply) => {
      const secret = FILE.exec(request.params.file)?.[1];
      const caller = secret === undefined ? null : await calendarHolder(database, secret, runner.clock());
      if (!caller) throw notHere();
      const language = request.query.language === 'es' ? 'es' : 'en';
      const { tag, text } = await runner.read(readCalendar, caller, {
        language,
        known: request.headers['if-none-match'] ?? null,
      });
      reply
        .header('cache-control', `private, max-age=${KEPT_SECONDS}`)
        .header('etag', tag)
        .header('x-robots-tag', 'noindex')
        .header('referrer-policy', 'no-referrer');
      if (text === null) return reply.code(304).send();
      return reply
        .type('text/calendar; charset=utf-8')
        .header('content-disposition', 'inline; filename="rootclock.ics"')
        .send(text);
    },
  );
}
