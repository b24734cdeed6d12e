/** PlantedGardens: where plants under a wrong name stand already, since somebody must tell whoever owns the garden. */
import type { CommandAnswer } from '../../../lib/api/index.ts';
import { useFormat } from '../../../lib/format/index.ts';
import { paths } from '../../../lib/paths.ts';
import { useMessages } from '../../../messages/index.ts';
import { Button, TextLink } from '../../../ui/action/index.ts';
import { Callout } from '../../../ui/feedback/index.ts';

export type Gardens = CommandAnswer<'stock.reIdentifyLot'>['gardens'];

export function PlantedGardens({ gardens, onClose }: { gardens: Gardens; onClose: () => void }) {
  const { sheets } = useMessages().lots;
  const { dates } = useFormat();
  return (
    <Callout
      tone="caution"
      title={sheets.gardensTitle}
      announce
      actions={<Button onClick={onClose}>{sheets.done}</Button>}
    >
      <ul>
        {gardens.map((garden) => {
          const line = sheets.gardenLine(
            garden.client ?? sheets.unknownGarden,
            garden.site ?? '',
            garden.units,
            dates.short(garden.lastPlantedOn),
          );
          return (
            <li key={garden.orderId ?? ''}>
              {garden.orderId ? <TextLink to={paths.order(garden.orderId)}>{line}</TextLink> : line}
            </li>
          );
        })}
      </ul>
    </Callout>
  );
}
