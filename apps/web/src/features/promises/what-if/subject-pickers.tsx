/** The order, lot or batch that a change is about, found by code or name among those that are open. */
import { keepPreviousData, useQuery } from '@tanstack/react-query';
import { useState } from 'react';
import { trpc } from '../../../lib/api/index.ts';
import { useRested } from '../../../lib/use-rested.ts';
import { useMessages } from '../../../messages/index.ts';
import { ComboboxField } from '../../../ui/fields/index.ts';
import type { Picked } from './what-if-values.ts';

interface SubjectPickerProps {
  value: Picked | null;
  onChange: (picked: Picked | null) => void;
}

interface PickedBatch extends Picked {
  cautiousUnits: number;
  readyOn: string | null;
}

const MOST_OFFERED = 12;
const shown = (value: Picked | null) => value && { id: value.id, label: value.code };

export function OrderPicker({ value, onChange }: SubjectPickerProps) {
  const words = useMessages().promises.whatIf;
  const [text, setText] = useState('');
  const asked = useRested(text);
  const query = useQuery({
    ...trpc.promises.listOrders.queryOptions({ search: asked, perPage: MOST_OFFERED }),
    placeholderData: keepPreviousData,
  });
  const options = (query.data?.rows ?? []).map(({ id, code, clientName, dueOn }) => ({
    id,
    label: code,
    detail: words.orderDetail(clientName, dueOn),
    meant: { id, code },
  }));
  return (
    <ComboboxField
      name="orderId"
      label={words.order}
      hint={words.orderHint}
      value={shown(value)}
      options={options}
      answers={query.isPending || query.isPlaceholderData ? null : asked}
      onText={setText}
      onChange={onChange}
    />
  );
}

export function LotPicker({ value, onChange }: SubjectPickerProps) {
  const words = useMessages().promises.whatIf;
  const [text, setText] = useState('');
  const asked = useRested(text);
  const query = useQuery({
    ...trpc.stock.listLots.queryOptions({ text: asked, perPage: MOST_OFFERED }),
    placeholderData: keepPreviousData,
  });
  const options = (query.data?.rows ?? []).map((lot) => ({
    id: lot.lotId,
    label: lot.code,
    detail: [lot.scientificName, lot.places.map((place) => place.code).join(', ')].filter(Boolean).join(' · '),
    meant: { id: lot.lotId, code: lot.code },
  }));
  return (
    <ComboboxField
      name="lotId"
      label={words.lot}
      hint={words.lotHint}
      value={shown(value)}
      options={options}
      answers={query.isPending || query.isPlaceholderData ? null : asked}
      onText={setText}
      onChange={onChange}
    />
  );
}

/** What is expected of the batch comes along, so that only what differs has to be typed. */
export function BatchPicker({
  value,
  onChange,
}: {
  value: Picked | null;
  onChange: (picked: PickedBatch | null) => void;
}) {
  const words = useMessages().promises.whatIf;
  const [text, setText] = useState('');
  const asked = useRested(text);
  const query = useQuery({
    ...trpc.propagation.listBatches.queryOptions({ text: asked, perPage: MOST_OFFERED }),
    placeholderData: keepPreviousData,
  });
  const options = (query.data?.rows ?? []).map(({ batchId, code, scientificName, cautiousUnits, readyOn }) => ({
    id: batchId,
    label: code,
    detail: scientificName,
    meant: { id: batchId, code, cautiousUnits, readyOn },
  }));
  return (
    <ComboboxField
      name="batchId"
      label={words.batch}
      hint={words.batchHint}
      value={shown(value)}
      options={options}
      answers={query.isPending || query.isPlaceholderData ? null : asked}
      onText={setText}
      onChange={onChange}
    />
  );
}
