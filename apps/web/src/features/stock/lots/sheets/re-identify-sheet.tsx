/** It is another plant: the lot and all that came from it are renamed; gardens planted under the wrong name are listed, since somebody must tell them. */
import { stock as contracts } from '@rootclock/contracts';
import { useState } from 'react';
import { Submit, useCommandForm } from '../../../../lib/form/index.ts';
import { useFormat } from '../../../../lib/format/index.ts';
import { useCommand } from '../../../../lib/outbox/index.ts';
import type { CommandAnswer } from '../../../../lib/api/index.ts';
import { paths } from '../../../../lib/paths.ts';
import { useMessages } from '../../../../messages/index.ts';
import { Button, TextLink } from '../../../../ui/action/index.ts';
import { Callout } from '../../../../ui/feedback/index.ts';
import { Form } from '../../../../ui/form/index.ts';
import { Sheet } from '../../../../ui/overlay/index.ts';
import { type PickedPlant, PlantPicker } from '../../../plants/plant-picker.tsx';
import { DayAndNote } from '../fields/day-note.tsx';
import { useLastDay } from '../fields/last.ts';
import type { LotSheetProps } from '../lot-data.ts';
import { useUndoable } from '../undo.ts';

type Gardens = CommandAnswer<'stock.reIdentifyLot'>['gardens'];

function PlantedGardens({ gardens, onClose }: { gardens: Gardens; onClose: () => void }) {
  const { sheets } = useMessages().lots;
  const { dates } = useFormat();
  return (
    <Callout tone="caution" title={sheets.gardensTitle} announce actions={<Button onClick={onClose}>{sheets.done}</Button>}>
      <ul>
        {gardens.map((garden) => {
          const line = sheets.gardenLine(garden.client ?? sheets.unknownGarden, garden.site ?? '', garden.units, dates.short(garden.lastPlantedOn));
          return <li key={garden.orderId ?? ''}>{garden.orderId ? <TextLink to={paths.order(garden.orderId)}>{line}</TextLink> : line}</li>;
        })}
      </ul>
    </Callout>
  );
}

export function ReIdentifySheet({ lot, onClose }: LotSheetProps) {
  const { sheets } = useMessages().lots;
  const [day] = useLastDay();
  const [gardens, setGardens] = useState<Gardens>([]);
  const tell = useUndoable();
  const form = useCommandForm({
    command: useCommand('stock.reIdentifyLot', { title: `${sheets.reIdentifyTitle}: ${lot.code}` }),
    contract: contracts.reIdentifyLot,
    initial: { plant: null as PickedPlant | null, happenedOn: day, note: '' },
    body: (said) => ({ lotId: lot.id, plantId: said.plant?.id ?? '', happenedOn: said.happenedOn, note: said.note }),
    onSaved: (answer) => {
      tell(sheets.reIdentifySaved(answer.lots), answer.entryId);
      if (answer.gardens.length > 0) setGardens(answer.gardens);
      else onClose();
    },
  });
  return (
    <Sheet open onClose={onClose} title={`${sheets.reIdentifyTitle}: ${lot.code}`}>
      {gardens.length > 0 ? (
        <PlantedGardens gardens={gardens} onClose={onClose} />
      ) : (
        <Form {...form.props}>
          <PlantPicker name="plantId" label={sheets.reIdentifyPlant} hint={sheets.reIdentifyHint} value={form.values.plant} onChange={(plant) => form.set({ plant })} />
          <DayAndNote day={form.field('happenedOn')} note={form.field('note')} />
          <Submit form={form}>{sheets.reIdentifySave}</Submit>
        </Form>
      )}
    </Sheet>
  );
}
