/** PlaceForm: a new place, or one that is changed, in a sheet over the page. */
import { stock as contracts } from '@rootclock/contracts';
import { PLACE_KINDS, type PlaceKind } from '@rootclock/domain';
import { useState } from 'react';
import { Submit, useCommandForm } from '../../../lib/form/index.ts';
import { newId } from '../../../lib/ids.ts';
import { useCommand } from '../../../lib/outbox/index.ts';
import { useMessages } from '../../../messages/index.ts';
import { toast } from '../../../ui/feedback/index.ts';
import { CheckboxField, SelectField, TextField } from '../../../ui/fields/index.ts';
import { Form } from '../../../ui/form/index.ts';
import { Sheet } from '../../../ui/overlay/index.ts';
import { type PickedPlace, PlacePicker } from './place-picker.tsx';

export interface PlaceDraft {
  placeId: string;
  code: string;
  name: string;
  kind: PlaceKind;
  parent: PickedPlace | null;
  winterCover: boolean;
}

export interface PlaceFormProps {
  /** The place that is changed; without one a new place is added. */
  place?: PlaceDraft;
  /** In which a new place lies at first, and whether that shelters it. */
  within?: PickedPlace & { winterCover: boolean };
  onClose: () => void;
}

export function PlaceForm({ place, within, onClose }: PlaceFormProps) {
  const { places } = useMessages().stockIn;
  return (
    <Sheet open onClose={onClose} title={place ? `${places.edit}: ${place.code}` : places.add}>
      <PlaceFields place={place} within={within} onClose={onClose} />
    </Sheet>
  );
}

function PlaceFields({ place, within, onClose }: PlaceFormProps) {
  const { places, placeKinds } = useMessages().stockIn;
  const [placeId] = useState(() => place?.placeId ?? newId());
  const add = useCommand('stock.addPlace', { title: places.add });
  const edit = useCommand('stock.editPlace', { title: places.edit });
  const form = useCommandForm({
    command: place ? edit : add,
    contract: contracts.editPlace,
    initial: { code: '', name: '', kind: '' as PlaceKind | '', parent: (within ?? null) as PickedPlace | null, winterCover: within?.winterCover ?? false, ...place },
    body: ({ code, name, kind, parent, winterCover }) => ({ placeId, code, name, kind, parentId: parent?.id ?? null, winterCover }),
    onSaved: (_answer, { code }) => {
      toast({ text: places.saved(code) });
      onClose();
    },
  });
  return (
    <Form {...form.props}>
      <TextField label={places.code} hint={places.codeHint} {...form.field('code')} maxLength={30} autoComplete="off" />
      <SelectField label={places.kind} {...form.field('kind')} choices={PLACE_KINDS.map((kind) => ({ value: kind, label: placeKinds[kind] }))} />
      <TextField label={places.name} optional {...form.field('name')} autoComplete="off" />
      <PlacePicker label={places.parent} optional {...form.field('parent')} name="parentId" {...(place ? { except: place.placeId } : {})} />
      <CheckboxField label={places.winterCover} hint={places.winterCoverHint} {...form.field('winterCover')} />
      <Submit form={form}>{places.save}</Submit>
    </Form>
  );
}
