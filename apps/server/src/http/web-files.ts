import { existsSync } from 'node:fs';
import path from 'node:path';
import fastifyStatic from '@fastify/static';
import type { FastifyInstance } from 'fastify';

/** The built web app, where there is one. */
export async function serveWebFiles(app: FastifyInstance, webRoot: string | undefined): Promise<void> {
  if (!webRoot || !existsSync(path.join(webRoot, 'index.html'))) return;
  // Only what vite names after its content never changes; everything else keeps its address and must be asked for anew.
  const assets = path.join(webRoot, 'assets') + path.sep;
  await app.register(fastifyStatic, {
    root: webRoot,
    wildcard: true,
    cacheControl: false,
    setHeaders: (reply, file) => {
      reply.header('cache-control', file.startsWith(assets) ? 'public, max-age=31536000, immutable' : 'no-cache');
    },
  });
  // Addresses of screens are the web app's own: each gets the same page.
  app.setNotFoundHandler((request, reply) =>
    request.method === 'GET' && request.headers.accept?.includes('text/html')
      ? reply.sendFile('index.html')
      : reply.code(404).send({ code: 'not-found', message: 'not-found', requestId: request.id }),
  );
}
