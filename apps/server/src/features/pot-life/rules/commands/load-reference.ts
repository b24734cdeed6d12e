import { plants } from '@rootclock/contracts';
import { OWNER } from '@rootclock/domain';
import { command } from '../../../../trpc/operation.ts';
import { loadReferenceData } from '../reference/load.ts';

/** What a new nursery begins with; harmless when given again. */
export const loadReference = command({
  name: 'loadReference',
  input: plants.loadReference,
  roles: OWNER,
  run: (context) => loadReferenceData(context),
});
