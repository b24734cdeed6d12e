import { type ReferenceProtocol, referenceProtocols } from '../../../../reference/index.ts';
import type { ReadContext } from '../../../../trpc/operation.ts';
import { referenceId } from '../../../plants/reference-load.ts';
import { loadKnown } from './store.ts';

/** The reference protocols of plants that the nursery grows and has no protocol for by the same method, be it its own or one it retired. */
export async function missingReference(context: ReadContext): Promise<ReferenceProtocol[]> {
  const { plantIds, protocols } = await loadKnown(context);
  const has = new Set(
    protocols.filter(({ label }) => label === '').map(({ plantId, method }) => `${plantId}/${method}`),
  );
  return referenceProtocols.filter(({ plantCode, method }) => {
    const plantId = referenceId(context.nurseryId, 'plant', plantCode);
    return plantIds.has(plantId) && !has.has(`${plantId}/${method}`);
  });
}
