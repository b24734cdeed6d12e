/** SourcePicker: a source of one plant by its code, provenance or vendor; those that are retired are not offered. */
import { keepPreviousData, useQuery } from '@tanstack/react-query';
import { useState } from 'react';
import { trpc } from '../../../lib/api/index.ts';
import { useMessages } from '../../../messages/index.ts';
import { ComboboxField, type FieldProps } from '../../../ui/fields/index.ts';

export interface PickedSource {
  id: string;
  code: string;
}

export interface SourcePickerProps extends Omit<FieldProps, 'label'> {
  label?: string;
  /** Only its sources are offered. */
  plantId: string | null;
  value: PickedSource | null;
  onChange: (source: PickedSource | null) => void;
}

export function SourcePicker({ label, plantId, value, onChange, ...props }: SourcePickerProps) {
  const { sources } = useMessages();
  const [text, setText] = useState('');
  const query = useQuery({ ...trpc.sources.listSources.queryOptions({ text, plantId, perPage: 20 }), placeholderData: keepPreviousData });
  return (
    <ComboboxField
      {...props}
      label={label ?? sources.pickerLabel}
      placeholder={sources.pickerPlaceholder}
      value={value && { id: value.id, label: value.code }}
      options={(query.data?.rows ?? []).map((row) => ({ id: row.sourceId, label: row.code, detail: [sources.kinds[row.kind], row.provenance, row.vendor].filter(Boolean).join(' · ') }))}
      onText={setText}
      loading={query.isFetching}
      onChange={(option) => onChange(option && { id: option.id, code: option.label })}
    />
  );
}
