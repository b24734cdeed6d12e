import { stock } from '@rootclock/contracts';
import { type Clocks, clocksAfter, earliestOf, FIELD, lotDifferences } from '@rootclock/domain';
import { refuse } from '../../../../../refusal.ts';
import { command } from '../../../../../trpc/operation.ts';
import { type LotFacts, loadLots } from '../../store.ts';
import { becomeLots, clocksOf, requirePots, requirePotted } from '../become.ts';

/** Dividing cuts roots and starts them anew; clumping keeps the oldest roots; a patched tray keeps its day, since most of it is old. */
function clocksOfConversion(conversion: stock.Conversion, lots: readonly LotFacts[], on: string): Clocks {
  if (conversion === 'divide') return clocksAfter({ kind: 'divide', on });
  if (conversion === 'clump') return clocksAfter({ kind: 'clump', clocks: lots.map(clocksOf), on });
  return clocksAfter({ kind: 'merge', clocks: lots.map(clocksOf) });
}

export const convertLot = command({
  name: 'convertLot',
  input: stock.convertLot,
  roles: FIELD,
  run: async (context, { conversion, from, into, happenedOn, note }) => {
    const lots = await loadLots(
      context,
      from.map(({ lotId }) => lotId),
      'from.0.lotId',
    );
    for (const lot of lots) requirePotted(lot, 'from.0.lotId');
    const differences = lotDifferences(lots, { sameContainer: false });
    if (differences.length > 0) refuse('lots-differ', { lots: lots.map(({ code }) => code), in: differences }, 'from');
    await requirePots(
      context,
      into.map(({ containerId }) => containerId),
    );
    const clocks = clocksOfConversion(conversion, lots, happenedOn);
    const pottedOn = conversion === 'patch' ? earliestOf(...lots.map((lot) => lot.pottedOn)) : happenedOn;
    return becomeLots(context, {
      kind: 'convert',
      happenedOn,
      note,
      details: { conversion },
      leaving: lots.map((lot, i) => ({
        lot,
        units: from[i]?.units ?? 0,
        placeId: from[i]?.placeId,
        field: `from.${i}.units`,
      })),
      becoming: into.map(({ lotId: id, ...next }) => ({ ...next, id, clocks, pottedOn })),
    });
  },
});
