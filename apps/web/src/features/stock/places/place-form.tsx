/** PlaceForm: a new place, or one that is changed, in a sheet over the page. */
import { stock as contracts } from '@rootclock/contracts';
import { PLACE_KINDS } from '@rootclock/domain';
import { useState } from 'react';
import { Submit, useCommandForm } from '../../../lib/form/index.ts';
import { newId } from '../../../lib/ids.ts';
import { useCommand } from '../../../lib/outbox/index.ts';
import { useMessages } from '../../../messages/index.ts';
import { toast } from '../../../ui/feedback/index.ts';
import { CheckboxField, NumberField, SelectField, TextField } from '../../../ui/fields/index.ts';
import { FieldGroup, Form } from '../../../ui/form/index.ts';
import { Sheet } from '../../../ui/overlay/index.ts';
import { MonthDayField } from '../../plants/month-day-field.tsx';
import { type PickedPlace, PlacePicker } from './place-picker.tsx';
import type { Story } from './place-story.tsx';

export interface PlaceFormProps {
  /** The place that is changed; without one a new place is added. */
  place?: Story;
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
  const {
    stockIn: { places, placeKinds },
    winter,
  } = useMessages();
  const [placeId] = useState(() => place?.placeId ?? newId());
  const add = useCommand('stock.addPlace', { title: places.add });
  const edit = useCommand('stock.editPlace', { title: places.edit });
  const above = place?.path.at(-1);
  const liesIn = above && { id: above.placeId, code: above.code };
  const form = useCommandForm({
    command: place ? edit : add,
    contract: contracts.editPlace,
    initial: {
      code: place?.code ?? '',
      name: place && place.name !== place.code ? place.name : '',
      kind: place?.kind ?? ('' as const),
      parent: (liesIn ?? within ?? null) as PickedPlace | null,
      winterCover: place?.winterCover ?? within?.winterCover ?? false,
      benchAreaM2: place?.benchAreaM2 ?? null,
      coverMd: place?.coverMd ?? '',
      baitMd: place?.baitMd ?? '',
      uncoverMd: place?.uncoverMd ?? '',
    },
    body: ({ code, name, kind, parent, winterCover, benchAreaM2, coverMd, baitMd, uncoverMd }) => ({
      placeId,
      code,
      name,
      kind,
      parentId: parent?.id ?? null,
      winterCover,
      benchAreaM2,
      coverMd: coverMd || null,
      baitMd: baitMd || null,
      uncoverMd: uncoverMd || null,
    }),
    ...(place ? { row: { id: 'placeId', edition: place.edition } } : {}),
    fromBody: ({ parentId }, called) => ({
      parent:
        typeof parentId === 'string'
          ? { id: parentId, code: called[parentId] ?? (liesIn?.id === parentId ? liesIn.code : '') }
          : null,
    }),
    onSaved: (_answer, { code }) => {
      toast({ text: places.saved(code) });
      onClose();
    },
  });
  return (
    <Form {...form.props}>
      <TextField label={places.code} hint={places.codeHint} {...form.field('code')} maxLength={30} autoComplete="off" />
      <SelectField
        label={places.kind}
        {...form.field('kind')}
        choices={PLACE_KINDS.map((kind) => ({ value: kind, label: placeKinds[kind] }))}
      />
      <TextField label={places.name} optional {...form.field('name')} autoComplete="off" />
      <PlacePicker
        label={places.parent}
        optional
        {...form.field('parent')}
        name="parentId"
        {...(place ? { except: place.placeId } : {})}
      />
      <CheckboxField label={places.winterCover} hint={places.winterCoverHint} {...form.field('winterCover')} />
      <NumberField
        decimal
        label={winter.benchArea}
        hint={winter.benchAreaHint}
        unit={winter.squareMetres}
        optional
        {...form.field('benchAreaM2')}
      />
      <FieldGroup legend={winter.dues}>
        <p>{winter.duesLead}</p>
        <MonthDayField label={winter.cover} optional {...form.field('coverMd')} />
        <MonthDayField label={winter.bait} hint={winter.baitHint} optional {...form.field('baitMd')} />
        <MonthDayField label={winter.uncover} optional {...form.field('uncoverMd')} />
      </FieldGroup>
      <Submit form={form}>{places.save}</Submit>
    </Form>
  );
}
