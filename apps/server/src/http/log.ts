import type { Writable } from 'node:stream';
import type { FastifyRequest, FastifyServerOptions } from 'fastify';

export interface LogTo {
  level: string;
  /** Standard output unless something else is given. */
  stream?: Writable;
}

/** What opens a door: a calendar's address, whatever cookie is ours, and any 256 random bits as they are written in addresses. */
const SECRETS: [RegExp, string][] = [
  [/(\/calendar\/)[^/?#\s"\\]+/g, '$1[hidden]'],
  [/(rootclock_\w+=)[^;,\s"\\]+/g, '$1[hidden]'],
  [/(?<![\w-])[\w-]{43}(?![\w-])/g, '[hidden]'],
];

const withoutSecrets = (line: string) =>
  SECRETS.reduce((text, [pattern, instead]) => text.replace(pattern, instead), line);

/** A request as it is logged. What was asked for, behind the question mark, is nobody's business but the asker's. */
const requestLine = ({ method, url, id, ip }: FastifyRequest) => ({
  id,
  method,
  url: url.split('?', 1)[0],
  remoteAddress: ip,
});

/** The log. Secrets are taken out of each line as it is written, so that no place that logs can forget it. */
export const loggerOf = ({ level, stream }: LogTo): FastifyServerOptions['logger'] => ({
  level,
  ...(stream && { stream }),
  serializers: { req: requestLine },
  hooks: { streamWrite: withoutSecrets },
});
