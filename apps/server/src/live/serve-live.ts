import { LIVE_BEAT_MS } from '@rootclock/contracts';
import type { FastifyInstance, FastifyReply } from 'fastify';
import { Changes } from '../db/changes/changes.ts';
import { openListener } from '../db/changes/listener.ts';
import { later } from '../later.ts';
import type { Caller } from '../trpc/operation.ts';
import type { Page } from './stream.ts';
import { Streams } from './streams.ts';

export interface LiveParts {
  databaseUrl: string;
  beatMs?: number;
}

/** What a request needs to hear of changes. */
export interface Hearing {
  streams: Streams;
  page: Page;
}

/** Answers what one request is handed to hear by. */
export type HearingOf = (callerNow: () => Promise<Caller | null>, reply: FastifyReply) => Hearing;

/**
 * Tells browsers what changed, within a second or so of the commit: one LISTEN connection a process, one stream of server-sent events a page.
 */
export function serveLive(app: FastifyInstance, { databaseUrl, beatMs = LIVE_BEAT_MS }: LiveParts): HearingOf {
  const streams = new Streams();
  const changes = new Changes({
    open: (hear) => openListener(databaseUrl, hear),
    after: later,
    chance: Math.random,
    stands: (standings) => streams.stands(standings),
    changed: (change) => streams.changed(change),
    sessionEnded: (end) => streams.sessionEnded(end),
    lost: (error) => app.log.warn({ err: error }, 'the live connection was lost'),
    odd: (payload) =>
      app.log.warn({ payload: payload.slice(0, 200) }, 'a notification that is not of ours was ignored'),
  });
  let beating: NodeJS.Timeout;
  app.addHook('onReady', async () => {
    await changes.start();
    beating = setInterval(() => streams.beat(), beatMs).unref();
  });
  app.addHook('preClose', async () => {
    clearInterval(beating);
    streams.stop();
    await changes.stop();
  });
  // Pages of earlier versions ask here; this answer ends their asking, and none of them is left behind by it.
  app.get('/live', (_request, reply) => reply.code(204).send());
  return (callerNow, reply) => ({ streams, page: { callerNow, hangUp: () => void reply.raw.destroy() } });
}
