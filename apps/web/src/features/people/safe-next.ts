import { paths } from '../../lib/paths.ts';

/** Only addresses of this app are followed: `next` stands in an address that anybody could have written. */
export function safeNext(next: string | undefined): string {
  return next !== undefined && /^\/(?![/\\])/.test(next) ? next : paths.today();
}
