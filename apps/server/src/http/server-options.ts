import { randomUUID } from 'node:crypto';
import type { FastifyHttpOptions, FastifyInstance, RawServerDefault } from 'fastify';
import { MOST_KILOBYTES, MOST_LINES } from './bounds.ts';
import { answerBadAddress, answerUnreadable } from './failures.ts';
import { type LogTo, loggerOf } from './log.ts';
import { longestPatience } from './patience.ts';

export interface Taking {
  log: LogTo | undefined;
  trustedProxies: readonly string[];
  /** How long a request may take to arrive. */
  patienceMs: number;
}

/** How requests are taken in, before any of our own code looks at them. */
export function serverOptions({ log, trustedProxies, patienceMs }: Taking): FastifyHttpOptions<RawServerDefault> {
  return {
    logger: log ? loggerOf(log) : false,
    genReqId: () => randomUUID(),
    bodyLimit: MOST_KILOBYTES * 1024,
    routerOptions: { maxParamLength: 5000 },
    trustProxy: trustedProxies.length > 0 ? [...trustedProxies] : false,
    forceCloseConnections: true,
    frameworkErrors: answerBadAddress,
    clientErrorHandler: answerUnreadable,
    // Node looks at its lines now and then only: the shares together keep within our patience.
    requestTimeout: Math.floor(longestPatience(patienceMs) * 0.8),
    // A host that is missing is refused by us, in our own form.
    http: {
      headersTimeout: Math.floor(patienceMs * 0.4),
      connectionsCheckingInterval: Math.floor(patienceMs * 0.1),
      requireHostHeader: false,
    },
  };
}

/** Beyond this many lines at a time new ones are turned away. */
export function limitLines(app: FastifyInstance): void {
  app.server.maxConnections = MOST_LINES;
}
