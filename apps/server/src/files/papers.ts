import { refuse } from '../refusal.ts';
import { toldKind } from './told-kinds.ts';

/** Programs may add something after the end mark, but not much. */
const END_WITHIN = 1024;

/** Refuses what does not begin and end as a PDF does. Nothing here opens one: it is kept and handed out as it came. */
export function checkPaper(bytes: Uint8Array): void {
  const end = Buffer.from(bytes.subarray(-END_WITHIN)).toString('latin1');
  if (toldKind(bytes) !== 'pdf' || !end.includes('%%EOF')) refuse('not-a-pdf', undefined);
}
