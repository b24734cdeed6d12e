import Fastify, { type FastifyInstance } from 'fastify';
import { serveCalendars } from './calendar.ts';
import { findRoleFault, openDatabase } from './db/pool.ts';
import { createRunner, type LetGo } from './db/runner.ts';
import { lettingGo } from './features/files/letting-go.ts';
import { foreseeRoll, replan, rollDay } from './features/replan.ts';
import { folderStore } from './files/folder-store.ts';
import { noFiles } from './files/file-store.ts';
import { keepFilesSwept } from './files/keep-swept.ts';
import { serveFiles } from './files/serving.ts';
import { takeUploads } from './files/uploads.ts';
import { stampAnswers } from './http/answer-headers.ts';
import { compressAnswers } from './http/compression.ts';
import { answerFailures } from './http/failures.ts';
import { refuseForgery } from './http/forgery.ts';
import { answerHealth } from './http/health.ts';
import { limitCalls } from './http/limits.ts';
import type { LogTo } from './http/log.ts';
import { refuseOddRequests } from './http/odd-requests.ts';
import { limitPatience } from './http/patience.ts';
import { keepAnswersPrivate } from './http/private-answers.ts';
import { serveProcedures } from './http/procedures.ts';
import { sendSecurityHeaders } from './http/security-headers.ts';
import { limitLines, serverOptions } from './http/server-options.ts';
import { keepSessions } from './http/sessions.ts';
import { serveWebFiles } from './http/web-files.ts';
import { serveLive, type LiveParts } from './live/serve-live.ts';
import { servePaper } from './paper/routes.ts';
import { rollDays } from './roll-days.ts';

export interface AppParts extends LiveParts {
  /** Folder of the built web app; without it only the interfaces are served. */
  webRoot?: string;
  /** Folder of photos and papers; without it none can be added. */
  filesFolder?: string;
  /** The clock, so that tests set the day. */
  clock?: () => Date;
  /** Where faults are written down; nowhere unless given. */
  log?: LogTo;
  /** Where people reach the server, when that is another address than the one it listens at. */
  publicUrl?: URL | undefined;
  /** The proxies whose word counts on who asks and by which name; nobody's unless given. */
  trustedProxies?: readonly string[];
  /** Cookies only over https; as the public address says unless given. */
  secureCookies?: boolean;
  /** Calls a minute and address, over all interfaces. */
  callsAMinute?: number;
  /** How long a request may take to arrive. */
  patienceMs?: number;
  /** Whether what time asks for is done by timers too: days are rolled, and the store of files is swept. */
  rollsDays?: boolean;
  /** Told of each statement as it goes to the database: for tests that count them. */
  sends?: (text: string) => void;
}

/** The server as the list of what it is put together from; each concern stands in a file of its own under http/. */
export async function createApp(parts: AppParts): Promise<FastifyInstance> {
  const {
    databaseUrl,
    webRoot,
    clock = () => new Date(),
    log,
    publicUrl,
    trustedProxies = [],
    callsAMinute = 6000,
    patienceMs = 30_000,
  } = parts;
  const { secureCookies: secure = publicUrl?.protocol === 'https:' } = parts;
  const database = openDatabase(databaseUrl, parts.sends && { sends: parts.sends });
  const fault = await findRoleFault(database);
  if (fault) {
    await database.close();
    throw new Error(`Rootclock refuses to serve from this database: ${fault}. The laws of its data would not bind.`);
  }
  const app = Fastify(serverOptions({ log, trustedProxies, patienceMs }));
  const lookAheadFailed = (err: unknown) => app.log.warn({ err }, 'promises could not be planned ahead or anew');
  const files = parts.filesFolder === undefined ? noFiles : folderStore(parts.filesFolder);
  // The command has committed: what is left behind is told by `check`, and goes with the next sweep.
  const letGo: LetGo = (nurseryId, hashes) =>
    lettingGo({ database, files })(nurseryId, hashes).catch((err: unknown) =>
      app.log.warn({ err }, 'files that nothing needs stay in the store until it is swept'),
    );
  const runner = createRunner({ database, files, letGo, replan, rollDay, foreseeRoll, clock, lookAheadFailed });

  stampAnswers(app, clock);
  answerFailures(app);
  limitLines(app);
  limitPatience(app, { patienceMs });
  keepAnswersPrivate(app);
  await sendSecurityHeaders(app, { secure });
  refuseOddRequests(app);
  const countCall = limitCalls(app, { callsAMinute });
  refuseForgery(app, { publicUrl });
  await compressAnswers(app);
  const sessions = await keepSessions(app, { database, clock, secure });

  if (parts.rollsDays) {
    rollDays(app, { database, runner });
    keepFilesSwept(app, { database, files, clock });
  }
  const hearing = serveLive(app, parts);
  await serveProcedures(app, { runner, database, sessions, hearing, publicUrl, countCall });
  answerHealth(app, database);
  serveCalendars(app, { runner, database });
  await takeUploads(app, { runner, sessions });
  serveFiles(app, { runner, sessions, files });
  servePaper(app, { runner, callerOf: sessions.callerOf });
  await serveWebFiles(app, webRoot);

  app.addHook('onClose', async () => {
    await runner.plans.stop();
    await database.close();
  });
  return app;
}
