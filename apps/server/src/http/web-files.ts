import { existsSync } from 'node:fs';
import path from 'node:path';
import fastifyStatic from '@fastify/static';
import { NO_PAGE } from '@rootclock/contracts/interfaces';
import type { FastifyInstance, FastifyRequest } from 'fastify';
import { notHere } from './failures.ts';

const isScreen = ({ method, url, headers }: FastifyRequest) =>
  (method === 'GET' || method === 'HEAD') && (headers.accept?.includes('text/html') ?? false) && !NO_PAGE.test(url);

/** The built web app, where there is one. */
export async function serveWebFiles(app: FastifyInstance, webRoot: string | undefined): Promise<void> {
  const root = webRoot && existsSync(path.join(webRoot, 'index.html')) ? webRoot : null;
  if (root) await serveFiles(app, root);
  app.setNotFoundHandler((request, reply) => {
    // Addresses of screens are the web app's own: each gets the same page.
    if (root && isScreen(request)) return reply.sendFile('index.html');
    throw notHere();
  });
}

async function serveFiles(app: FastifyInstance, root: string): Promise<void> {
  // Only what vite names after its content never changes; everything else keeps its address and must be asked for anew.
  const assets = path.join(root, 'assets') + path.sep;
  await app.register(fastifyStatic, {
    root,
    wildcard: true,
    // The build lays a compressed one beside each file.
    preCompressed: true,
    cacheControl: false,
    setHeaders: (reply, file) => {
      reply.header('cache-control', file.startsWith(assets) ? 'public, max-age=31536000, immutable' : 'no-cache');
    },
  });
}
