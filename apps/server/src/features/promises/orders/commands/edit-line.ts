import { promises } from '@rootclock/contracts';
import { GROWERS } from '@rootclock/domain';
import { refuse } from '../../../../refusal.ts';
import { editing } from '../../../../trpc/editing.ts';
import { alternativesNamed, checkAlternatives, checkBeds } from '../../../orders/lines/check-lines.ts';
import { lineEdits, loadOpenLine, updateLine } from '../../../orders/lines/store.ts';
import { requireWholeTrays } from '../../../orders/lines/whole-trays.ts';
import { requireNatives } from '../../../orders/orders/natives.ts';
import { loadScope } from '../../allocation/load.ts';
import { itemOf } from '../../allocation/scope.ts';
import { settleTurn } from '../turn.ts';

export const editLine = editing({
  name: 'editLine',
  input: promises.editLine,
  roles: GROWERS,
  edits: lineEdits,
  run: async (context, { acceptedShortages, keepRank, ...input }) => {
    const { line, order } = await loadOpenLine(context, input.lineId);
    const done = line.stagedUnits + line.deliveredUnits;
    const least = Math.max(1, done);
    if (input.units < least)
      refuse('below-what-happened', { least, staged: line.stagedUnits, delivered: line.deliveredUnits }, 'units');
    // A line may end at what has happened, though a tray of it was broken.
    if (input.units !== done) requireWholeTrays(input.units, line.cells, 'units');
    const [asked] = line.accepts;
    const item = { plantId: asked?.plantId ?? '', containerId: asked?.containerId ?? '', cells: line.cells };
    await checkAlternatives(context, [{ ...item, alternatives: input.alternatives, path: '' }]);
    await checkBeds(context, order, [input], () => '');
    await requireNatives(context, order, alternativesNamed(input.alternatives, ''));
    const wanted = { ...input, seedZone: input.seedZone ?? null };
    const scope = await loadScope(context, {
      lines: [line.id],
      items: input.alternatives,
      asksTreatments: input.untreated,
    });
    const change = {
      units: wanted.units,
      seedZone: wanted.seedZone,
      wildType: wanted.wildType,
      untreated: wanted.untreated,
      accepts: [
        { item: itemOf(item.plantId, item.containerId), penalty: 0 },
        ...wanted.alternatives.map(({ plantId, containerId, penalty }) => ({
          item: itemOf(plantId, containerId),
          penalty,
        })),
      ],
    };
    const { keepsRank } = await settleTurn(context, scope, new Map([[line.id, change]]), {
      acceptedShortages,
      keepRank,
    });
    await updateLine(context, wanted);
    context.touched.line(line.id);
    return { lineId: line.id, keepsRank };
  },
});
