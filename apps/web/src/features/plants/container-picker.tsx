/** ContainerPicker: a tray or pot by name, code or size. There are a few dozen, so all of them come at once and the typing narrows them here. */
import { useQuery } from '@tanstack/react-query';
import type { plants as contracts } from '@rootclock/contracts';
import type { ContainerKind } from '@rootclock/domain';
import { useState } from 'react';
import { trpc } from '../../lib/api/index.ts';
import { useFormat } from '../../lib/format/index.ts';
import { useMessages } from '../../messages/index.ts';
import { ComboboxField, type FieldProps, type Offer } from '../../ui/fields/index.ts';

export type PickedContainer = Pick<contracts.ContainerRow, 'id' | 'name'>;

export interface ContainerPickerProps extends Omit<FieldProps, 'label'> {
  label?: string;
  value: PickedContainer | null;
  onChange: (container: contracts.ContainerRow | null) => void;
  /** Only containers of these kinds are offered; all when left out. */
  kinds?: readonly ContainerKind[];
}

export function ContainerPicker({ label, value, onChange, kinds, ...props }: ContainerPickerProps) {
  const { containerPicker } = useMessages().plants;
  const describe = useContainerWords();
  const [text, setText] = useState('');
  const query = useQuery(trpc.plants.listContainers.queryOptions({}));
  const words = text.toLowerCase().split(/\s+/).filter(Boolean);
  const offered = (query.data ?? []).filter((container) => {
    const told = `${container.name} ${container.code} ${describe(container)}`.toLowerCase();
    return (!kinds || kinds.includes(container.kind)) && words.every((word) => told.includes(word));
  });
  const asOffer = (container: contracts.ContainerRow): Offer<contracts.ContainerRow> => ({
    id: container.id,
    label: container.name,
    detail: [describe(container), container.code].filter(Boolean).join(' · '),
    meant: container,
  });
  return (
    <ComboboxField
      {...props}
      label={label ?? containerPicker.label}
      placeholder={containerPicker.placeholder}
      value={value && { id: value.id, label: value.name }}
      options={offered.map(asOffer)}
      answers={query.isPending ? null : text}
      onText={setText}
      onChange={onChange}
    />
  );
}

/** A container's measures in a few words: "1.06 qt, 7.1 in deep". */
export function useContainerWords() {
  const { containerPicker } = useMessages().plants;
  const { measures } = useFormat();
  return ({ volumeMl, depthMm, cells }: Pick<contracts.ContainerRow, 'volumeMl' | 'depthMm' | 'cells'>): string =>
    [
      cells === null ? null : containerPicker.cells(cells),
      volumeMl === null ? null : measures.volume(volumeMl),
      depthMm === null ? null : containerPicker.deep(measures.length(depthMm)),
    ]
      .filter((part) => part !== null)
      .join(', ');
}
