import Fastify, { type FastifyInstance } from 'fastify';
import { serveCalendars } from './calendar.ts';
import { findRoleFault, openDatabase } from './db/pool.ts';
import { createRunner } from './db/runner.ts';
import { foreseeRoll, replan, rollDay } from './features/replan.ts';
import { refuseForgery } from './http/forgery.ts';
import { answerHealth } from './http/health.ts';
import { limitRequests } from './http/limits.ts';
import { serveLive } from './http/live-updates.ts';
import { serveProcedures } from './http/procedures.ts';
import { sendSecurityHeaders } from './http/security-headers.ts';
import { keepSessions } from './http/sessions.ts';
import { serveWebFiles } from './http/web-files.ts';
import { servePaper } from './paper/routes.ts';

export interface AppParts {
  databaseUrl: string;
  /** Folder of the built web app; without it only the interfaces are served. */
  webRoot?: string;
  /** The clock, so that tests set the day. */
  clock?: () => Date;
  logger?: boolean;
  /** Cookies only over https. */
  secureCookies?: boolean;
  /** Requests a minute and address, over all interfaces. */
  requestsAMinute?: number;
}

/** The server as the list of what it is put together from; each concern stands in a file of its own under http/. */
export async function createApp(parts: AppParts): Promise<FastifyInstance> {
  const { databaseUrl, webRoot, clock = () => new Date(), logger = false, secureCookies = false, requestsAMinute = 6000 } = parts;
  const database = openDatabase(databaseUrl);
  const fault = await findRoleFault(database);
  if (fault) {
    await database.$disconnect();
    throw new Error(`Rootclock refuses to serve from this database: ${fault}. The laws of its data would not bind.`);
  }
  const runner = createRunner({ database, replan, rollDay, foreseeRoll, clock });
  const app = Fastify({
    logger: logger ? { level: 'warn' } : false,
    bodyLimit: 2_000_000,
    routerOptions: { maxParamLength: 5000 },
    trustProxy: false,
    forceCloseConnections: true,
  });

  await sendSecurityHeaders(app, { secure: secureCookies });
  const sessions = await keepSessions(app, { database, clock, secure: secureCookies });
  await limitRequests(app, { requestsAMinute });
  refuseForgery(app);

  await serveProcedures(app, { runner, database, sessions });
  answerHealth(app, database);
  serveCalendars(app, { runner, database });
  serveLive(app, { databaseUrl, sessions });
  servePaper(app, { runner, callerOf: sessions.callerOf });
  await serveWebFiles(app, webRoot);

  app.addHook('onClose', () => database.$disconnect());
  return app;
}
