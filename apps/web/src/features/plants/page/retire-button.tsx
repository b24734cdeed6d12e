/** Retires a plant, or takes it back. Nothing is lost by either, so it is done at once and can be undone. */
import type { plants as contracts } from '@rootclock/contracts';
import { useCommand } from '../../../lib/outbox/index.ts';
import { tellRefused } from '../../../lib/tell-refused.ts';
import { useMessages } from '../../../messages/index.ts';
import { Button } from '../../../ui/action/index.ts';
import { toast } from '../../../ui/feedback/index.ts';

export function RetireButton({ plant }: { plant: contracts.PlantPage }) {
  const { page: say } = useMessages().plants;
  const retire = useCommand('plants.retirePlant', { title: `${say.retire}: ${plant.scientificName}` });
  const restore = useCommand('plants.restorePlant', { title: `${say.restore}: ${plant.scientificName}` });
  const body = { plantId: plant.id };
  const takeBack = () =>
    void restore.send(body).then(() => toast({ text: say.restoredToast(plant.scientificName) }), tellRefused);
  const takeOut = () =>
    void retire
      .send(body)
      .then(() => toast({ text: say.retiredToast(plant.scientificName), undo: takeBack }), tellRefused);
  return (
    <Button
      busy={retire.state === 'sending' || restore.state === 'sending'}
      onClick={plant.isRetired ? takeBack : takeOut}
    >
      {plant.isRetired ? say.restore : say.retire}
    </Button>
  );
}
