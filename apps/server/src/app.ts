import { existsSync } from 'node:fs';
import path from 'node:path';
import cookie from '@fastify/cookie';
import helmet from '@fastify/helmet';
import rateLimit from '@fastify/rate-limit';
import fastifyStatic from '@fastify/static';
import { fastifyTRPCPlugin, type FastifyTRPCPluginOptions } from '@trpc/server/adapters/fastify';
import Fastify, { type FastifyInstance, type FastifyRequest } from 'fastify';
import { serveCalendars } from './calendar.ts';
import { findRoleFault, openDatabase } from './db/pool.ts';
import { isReady } from './db/ready.ts';
import { createRunner } from './db/runner.ts';
import { foreseeRoll, replan, rollDay } from './features/replan.ts';
import { callerOf } from './features/people/sign-in.ts';
import { Live } from './live.ts';
import { servePaper } from './paper/routes.ts';
import { appRouter, type AppRouter } from './router.ts';
import { statusOf } from './trpc/answer-error.ts';
import { answered, type RequestContext } from './trpc/procedures.ts';

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

const COOKIE = 'rootclock_session';

export async function createApp({ databaseUrl, webRoot, clock = () => new Date(), logger = false, secureCookies = false, requestsAMinute = 6000 }: AppParts): Promise<FastifyInstance> {
  const database = openDatabase(databaseUrl);
  const fault = await findRoleFault(database);
  if (fault) {
    await database.$disconnect();
    throw new Error(`Rootclock refuses to serve from this database: ${fault}. The laws of its data would not bind.`);
  }
  const runner = createRunner({ database, replan, rollDay, foreseeRoll, clock, lookAheadFailed: (err) => app.log.warn({ err }, 'the day’s roll could not be looked at ahead') });
  const app = Fastify({ logger: logger ? { level: 'warn' } : false, bodyLimit: 2_000_000, routerOptions: { maxParamLength: 5000 }, trustProxy: false, forceCloseConnections: true });
  await app.register(helmet, {
    contentSecurityPolicy: { directives: { 'default-src': ["'self'"], 'style-src': ["'self'", "'unsafe-inline'"], 'img-src': ["'self'", 'data:'], 'upgrade-insecure-requests': null } },
    hsts: secureCookies,
  });
  await app.register(cookie);
  await app.register(rateLimit, { max: requestsAMinute, timeWindow: '1 minute', allowList: (request) => request.url.startsWith('/health') });

  // A page of another site can make a browser send our cookie; SameSite stops most of that and this the rest.
  app.addHook('onRequest', async (request, reply) => {
    if (request.method === 'GET' || request.method === 'HEAD') return;
    if (isForged(request)) await reply.code(403).send({ code: 'forged-request', message: 'forged-request', requestId: request.id });
    // The types that a form of another site could send are no JSON either.
    else if (!isJson(request)) await reply.code(415).send({ code: 'invalid-input', message: 'invalid-input', requestId: request.id });
  });

  const live = new Live(databaseUrl, app);
  const caller = (request: FastifyRequest) => callerOf(database, request.cookies[COOKIE] ?? null, clock());

  await app.register(fastifyTRPCPlugin, {
    prefix: '/trpc',
    trpcOptions: {
      router: appRouter,
      createContext: async ({ req, res }): Promise<RequestContext> => ({
        runner, database, caller: await answered(() => caller(req)), requestId: req.id, address: req.ip, sessionToken: req.cookies[COOKIE] ?? null,
        setSession: (token, expiresAt) => {
          if (token && expiresAt) res.setCookie(COOKIE, token, { httpOnly: true, sameSite: 'lax', secure: secureCookies, path: '/', expires: expiresAt });
          else res.clearCookie(COOKIE, { path: '/' });
        },
      }),
      responseMeta: ({ data, errors }) => statusOf(errors, data.length),
      onError: ({ error, ctx, path: procedure }) => {
        const found = { err: error.cause ?? error, procedure, requestId: ctx?.requestId };
        if (error.code === 'INTERNAL_SERVER_ERROR') app.log.error(found, 'fault');
        else if (error.code === 'SERVICE_UNAVAILABLE') app.log.warn(found, 'outcome unknown');
      },
    } satisfies FastifyTRPCPluginOptions<AppRouter>['trpcOptions'],
  });

  app.get('/health', async () => ({ live: true }));
  app.get('/ready', async (_request, reply) => {
    const ready = await isReady(database).catch(() => false);
    return reply.code(ready ? 200 : 503).send({ ready });
  });
  serveCalendars(app, { runner, database });
  app.get('/live', async (request, reply) => {
    const who = await caller(request);
    if (!who) return reply.code(401).send({ code: 'not-signed-in', message: 'not-signed-in', requestId: request.id });
    live.open(who, reply);
    return reply;
  });
  servePaper(app, { runner, callerOf: caller });

  if (webRoot && existsSync(path.join(webRoot, 'index.html'))) {
    // Only what vite names after its content never changes; everything else keeps its address and must be asked for anew.
    const assets = path.join(webRoot, 'assets') + path.sep;
    await app.register(fastifyStatic, { root: webRoot, wildcard: true, cacheControl: false, setHeaders: (reply, file) => {
      reply.header('cache-control', file.startsWith(assets) ? 'public, max-age=31536000, immutable' : 'no-cache');
    } });
    // Addresses of screens are the web app's own: each gets the same page.
    app.setNotFoundHandler((request, reply) => (request.method === 'GET' && request.headers.accept?.includes('text/html') ? reply.sendFile('index.html') : reply.code(404).send({ code: 'not-found', message: 'not-found', requestId: request.id })));
  }

  app.addHook('onReady', () => live.start());
  app.addHook('preClose', () => live.stop());
  app.addHook('onClose', () => database.$disconnect());
  return app;
}

const isJson = (request: FastifyRequest) => /^application\/json\s*(;|$)/i.test(request.headers['content-type'] ?? '');

function isForged(request: FastifyRequest): boolean {
  const site = request.headers['sec-fetch-site'];
  if (site && site !== 'same-origin' && site !== 'none') return true;
  const origin = request.headers.origin;
  if (!origin) return false;
  return !URL.canParse(origin) || new URL(origin).host !== request.headers.host;
}
