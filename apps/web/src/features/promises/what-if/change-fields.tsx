/** The fields of a change, by its kind. What is there now is said beside each. */
import { useQuery } from '@tanstack/react-query';
import { trpc } from '../../../lib/api/index.ts';
import { useMessages } from '../../../messages/index.ts';
import { DateField, NumberField, SelectField } from '../../../ui/fields/index.ts';
import { FromPlace } from '../../propagation/sheets/from-place.tsx';
import { FromPlaceField } from '../../stock/lots/fields/place-field.tsx';
import { ClientPicker } from '../../clients/client-picker.tsx';
import { ItemPickers } from '../../orders/pickers/item-pickers.tsx';
import { SuggestedPlace } from '../../orders/pickers/suggested-place.tsx';
import { BatchPicker, LotPicker, OrderPicker } from './subject-pickers.tsx';
import type { WhatIfValues } from './what-if-values.ts';

export interface ChangeFieldsProps {
  values: WhatIfValues;
  onChange: (part: Partial<WhatIfValues>) => void;
}

export function ChangeFields(props: ChangeFieldsProps) {
  switch (props.values.kind) {
    case '':
      return null;
    case 'move-order':
    case 'cancel-order':
      return <OrderFields {...props} />;
    case 'add-order':
      return <NewOrderFields {...props} />;
    case 'lose-lot':
      return <LotFields {...props} />;
    case 'lose-batch':
    case 'change-batch':
      return <BatchFields {...props} />;
  }
}

function OrderFields({ values, onChange }: ChangeFieldsProps) {
  const { orders, promises } = useMessages();
  const { order, kind } = values;
  const { data } = useQuery({
    ...trpc.promises.readOrder.queryOptions({ orderId: order?.id ?? '' }),
    enabled: order !== null,
  });
  const staged = data?.stagedUnits ?? 0;
  return (
    <>
      <OrderPicker value={order} onChange={(picked) => onChange({ order: picked, placeId: '' })} />
      {kind === 'move-order' && (
        <DateField
          name="dueOn"
          label={promises.day.newDay}
          hint={data && promises.day.now(data.dueOn)}
          value={values.dueOn}
          onChange={(dueOn) => onChange({ dueOn })}
        />
      )}
      {kind === 'cancel-order' && staged > 0 && (
        <SuggestedPlace
          name="placeId"
          label={promises.whatIf.broughtBackTo}
          hint={orders.list.cancelStaged(staged)}
          preferring="quarantine"
          value={values.placeId}
          onChange={(placeId) => onChange({ placeId })}
        />
      )}
    </>
  );
}

function NewOrderFields({ values, onChange }: ChangeFieldsProps) {
  const { orders, promises } = useMessages();
  const { client } = values;
  const { data } = useQuery({
    ...trpc.gardens.readClient.queryOptions({ clientId: client?.id ?? '' }),
    enabled: client !== null,
  });
  const sites = data?.siteRows ?? [];
  return (
    <>
      <ItemPickers value={values} onChange={({ plant, container }) => onChange({ plant, container })} />
      <NumberField
        name="units"
        label={orders.units}
        steps
        min={1}
        value={values.units}
        onChange={(units) => onChange({ units })}
      />
      <DateField name="dueOn" label={orders.onDay} value={values.dueOn} onChange={(dueOn) => onChange({ dueOn })} />
      <ClientPicker
        name="clientId"
        optional
        value={client}
        onChange={(picked) => onChange({ client: picked, siteId: '' })}
      />
      {sites.length > 0 && (
        <SelectField
          name="siteId"
          label={promises.whatIf.forSite}
          hint={promises.whatIf.siteHint}
          optional
          empty={orders.noSite}
          value={values.siteId}
          onChange={(siteId) => onChange({ siteId })}
          choices={sites.map(({ id, name }) => ({ value: id, label: name }))}
        />
      )}
    </>
  );
}

function LotFields({ values, onChange }: ChangeFieldsProps) {
  const { orders, promises } = useMessages();
  const words = promises.whatIf;
  const { lot } = values;
  const { data } = useQuery({ ...trpc.stock.readLot.queryOptions({ lotId: lot?.id ?? '' }), enabled: lot !== null });
  const here = data?.standing.find(({ placeId }) => placeId === values.placeId);
  return (
    <>
      <LotPicker value={lot} onChange={(picked) => onChange({ lot: picked, placeId: '' })} />
      {data && (
        <FromPlaceField standing={data.standing} value={values.placeId} onChange={(placeId) => onChange({ placeId })} />
      )}
      <NumberField
        name="units"
        label={words.lost}
        optional
        hint={data && words.lostHint(orders.unitsOf(here?.units ?? data.units.onHand))}
        steps
        min={1}
        value={values.units}
        onChange={(units) => onChange({ units })}
      />
    </>
  );
}

function BatchFields({ values, onChange }: ChangeFieldsProps) {
  const { promises, propagation } = useMessages();
  const words = promises.whatIf;
  const { batch, kind } = values;
  const { data } = useQuery({
    ...trpc.propagation.readBatch.queryOptions({ batchId: batch?.id ?? '' }),
    enabled: batch !== null,
  });
  const here = data?.places.find(({ placeId }) => placeId === values.placeId);
  return (
    <>
      <BatchPicker
        value={batch}
        onChange={(picked) =>
          onChange({
            batch: picked && { id: picked.id, code: picked.code },
            placeId: '',
            cautiousUnits: picked?.cautiousUnits ?? null,
            readyOn: picked?.readyOn ?? '',
          })
        }
      />
      {kind === 'lose-batch' ? (
        <>
          {data && (
            <FromPlace
              batch={data}
              name="placeId"
              optional
              value={values.placeId}
              onChange={(placeId) => onChange({ placeId })}
            />
          )}
          <NumberField
            name="units"
            label={words.lost}
            optional
            hint={data && words.lostHint(propagation.units(here?.units ?? data.standingUnits, data.unit))}
            steps
            min={1}
            value={values.units}
            onChange={(units) => onChange({ units })}
          />
        </>
      ) : (
        <>
          <NumberField
            name="cautiousUnits"
            label={words.cautious}
            hint={data && words.cautiousNow(data.cautiousUnits)}
            steps
            value={values.cautiousUnits}
            onChange={(cautiousUnits) => onChange({ cautiousUnits })}
          />
          <DateField
            name="readyOn"
            label={words.ready}
            optional
            hint={data && words.readyNow(data.readyOn)}
            value={values.readyOn}
            onChange={(readyOn) => onChange({ readyOn })}
          />
        </>
      )}
    </>
  );
}
