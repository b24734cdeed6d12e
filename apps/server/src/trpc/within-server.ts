import { noDoor } from './door.ts';
import type { RequestContext } from './procedures.ts';

/** What a call from within the server brings, without a request: nobody listens behind it, and what a browser would be given goes nowhere. */
export const contextWithinServer = (parts: Pick<RequestContext, 'runner' | 'database' | 'caller'>): RequestContext => ({
  ...parts,
  requestId: 'within',
  address: '127.0.0.1',
  isBatch: false,
  door: noDoor,
});
