/** BedSheet: a new bed of a site, or a change of one. The area is typed in the nursery's own unit and kept in square centimetres. */
import { clients as contracts } from '@rootclock/contracts';
import { BED_MOISTURE, BED_SUN, type BedMoisture, type BedSun } from '@rootclock/domain';
import { useState } from 'react';
import { useSession } from '../../lib/api/index.ts';
import { Submit, useCommandForm } from '../../lib/form/index.ts';
import { newId } from '../../lib/ids.ts';
import { useCommand } from '../../lib/outbox/index.ts';
import { useMessages } from '../../messages/index.ts';
import { toast } from '../../ui/feedback/index.ts';
import { NumberField, SelectField, TextArea, TextField } from '../../ui/fields/index.ts';
import { Form } from '../../ui/form/index.ts';
import { Sheet } from '../../ui/overlay/index.ts';
import { areaCm2, areaTyped } from './area.ts';

export interface BedSheetProps {
  siteId: string;
  /** Left out for a new bed. */
  bed?: contracts.BedRow;
  onClose: () => void;
}

export function BedSheet({ siteId, bed, onClose }: BedSheetProps) {
  const { clients: words, orders } = useMessages();
  const { units } = useSession().nursery;
  const [bedId] = useState(() => bed?.id ?? newId());
  const initial = {
    name: bed?.name ?? '',
    areaCm2: bed?.areaCm2 ? areaTyped(bed.areaCm2, units) : null,
    sun: (bed?.sun ?? '') as BedSun | '',
    moisture: (bed?.moisture ?? '') as BedMoisture | '',
    note: bed?.note ?? '',
  };
  const bodyOf = (values: typeof initial) => ({
    bedId,
    ...values,
    areaCm2: values.areaCm2 === null ? null : areaCm2(values.areaCm2, units),
    sun: values.sun || null,
    moisture: values.moisture || null,
  });
  const onSaved = () => {
    toast({ text: words.bedSaved });
    onClose();
  };
  const adding = useCommandForm({
    command: useCommand('clients.addBed', { title: words.bedTitle }),
    contract: contracts.addBed,
    initial,
    body: (values) => ({ siteId, ...bodyOf(values) }),
    onSaved,
  });
  const typedArea = (area: unknown) => (typeof area === 'number' ? areaTyped(area, units) : null);
  const editing = useCommandForm({
    command: useCommand('clients.editBed', { title: words.bedEditTitle }),
    contract: contracts.editBed,
    initial,
    body: bodyOf,
    row: { id: 'bedId', edition: bed?.edition ?? 1 },
    fromBody: (body) => ({ areaCm2: typedArea(body['areaCm2']) }),
    words: {
      areaCm2: {
        label: words.area,
        value: (area) => (area === null ? '' : `${typedArea(area)} ${words.areaUnits[units]}`),
      },
    },
    onSaved,
  });
  const form = bed ? editing : adding;
  return (
    <Sheet open onClose={onClose} title={bed ? words.bedEditTitle : words.bedTitle}>
      <Form {...form.props}>
        <TextField label={words.bedName} autoComplete="off" {...form.field('name')} />
        <NumberField label={words.area} optional decimal unit={words.areaUnits[units]} {...form.field('areaCm2')} />
        <SelectField
          label={words.sun}
          optional
          empty={words.notKnown}
          choices={BED_SUN.map((sun) => ({ value: sun, label: words.sunIs[sun] }))}
          {...form.field('sun')}
        />
        <SelectField
          label={words.moisture}
          optional
          empty={words.notKnown}
          choices={BED_MOISTURE.map((moisture) => ({ value: moisture, label: words.moistureIs[moisture] }))}
          {...form.field('moisture')}
        />
        <TextArea label={orders.note} optional rows={2} {...form.field('note')} />
        <Submit form={form}>{orders.save}</Submit>
      </Form>
    </Sheet>
  );
}
