import { stock } from '@rootclock/contracts';
import { clocksAfter, FIELD } from '@rootclock/domain';
import { found, refuse } from '../../../../../refusal.ts';
import { command, type CommandContext } from '../../../../../trpc/operation.ts';
import { requireBed } from '../../open-places.ts';
import { type ContainerFacts, loadContainers, loadGround, loadLot } from '../../store.ts';
import { becomeLots, requirePotted } from '../become.ts';

async function groundOf(context: CommandContext, containerId: string | null | undefined): Promise<ContainerFacts> {
  if (!containerId) return found(await loadGround(context), 'container', 'into.containerId');
  const [named] = await loadContainers(context, [containerId], 'into.containerId');
  const container = found(named, 'container', 'into.containerId');
  if (container.kind !== 'ground')
    refuse('wrong-container', { container: container.code, kind: container.kind, needs: 'ground' }, 'into.containerId');
  return container;
}

/** In the ground no clock runs. The plants stay the nursery's own stock, so a hold goes with them into the bed. */
export const plantInBed = command({
  name: 'plantInBed',
  input: stock.plantInBed,
  roles: FIELD,
  run: async (context, { lotId, placeId, units, into, happenedOn, note }) => {
    const lot = await loadLot(context, lotId);
    requirePotted(lot);
    await requireBed(context, into.bedId, 'into.bedId');
    const ground = await groundOf(context, into.containerId);
    return becomeLots(context, {
      kind: 'pot-up',
      happenedOn,
      note,
      details: { bed: true },
      leaving: [{ lot, units, placeId, field: 'units' }],
      becoming: [
        {
          id: into.lotId,
          containerId: ground.id,
          placeId: into.bedId,
          units,
          countKind: into.countKind,
          clocks: clocksAfter({ kind: 'plant-in-ground' }),
          pottedOn: happenedOn,
        },
      ],
    });
  },
});
