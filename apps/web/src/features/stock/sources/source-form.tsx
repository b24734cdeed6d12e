/** SourceForm: a new source, or one that is described anew, in a sheet over the page. */
import { sources as contracts } from '@rootclock/contracts';
import { SOURCE_KINDS, SOURCE_ORIGINS, type SourceKind, type SourceOrigin } from '@rootclock/domain';
import { useState } from 'react';
import { useSession } from '../../../lib/api/index.ts';
import { Submit, useCommandForm } from '../../../lib/form/index.ts';
import { useFormat } from '../../../lib/format/index.ts';
import { newId } from '../../../lib/ids.ts';
import { useCommand } from '../../../lib/outbox/index.ts';
import { useMessages } from '../../../messages/index.ts';
import { toast } from '../../../ui/feedback/index.ts';
import { RadioField, RoughDayField, SelectField, TextArea, TextField } from '../../../ui/fields/index.ts';
import { Form } from '../../../ui/form/index.ts';
import { Sheet } from '../../../ui/overlay/index.ts';
import { type PickedPlant, PlantPicker } from '../../plants/plant-picker.tsx';
import { MotherLotField, type PickedLot } from './mother-lot-field.tsx';
import { NO_SEED, purityTyped, seedBodyOf, type SeedDraft, SeedFields } from './seed-fields.tsx';

export interface SourceDraft extends SeedDraft {
  sourceId: string;
  plant: PickedPlant | null;
  kind: SourceKind | '';
  provenance: string;
  seedZone: string;
  origin: SourceOrigin;
  gathered: string;
  collector: string;
  permit: string;
  vendor: string;
  vendorLot: string;
  pesticideStatement: string;
  motherLot: PickedLot | null;
  note: string;
}

const NEW: Omit<SourceDraft, 'sourceId'> = {
  ...NO_SEED,
  plant: null,
  kind: '',
  provenance: '',
  seedZone: '',
  origin: 'unknown',
  gathered: '',
  collector: '',
  permit: '',
  vendor: '',
  vendorLot: '',
  pesticideStatement: '',
  motherLot: null,
  note: '',
};

const isBought = (kind: SourceKind | '') => kind === 'bought-seed' || kind === 'bought-plants';
/** What plants here gave: seed of a known lot keeps its line as cuttings do. */
const fromHere = (kind: SourceKind | '') =>
  kind === 'mother-plants' || kind === 'in-ground-bed' || kind === 'seed-collection';

interface EditedSource extends SourceDraft {
  code: string;
  edition: number;
}

export function SourceForm({ source, onClose }: { source?: EditedSource; onClose: () => void }) {
  const { sources } = useMessages();
  return (
    <Sheet open onClose={onClose} title={source ? `${sources.edit}: ${source.code}` : sources.add}>
      {source ? <EditFields source={source} onClose={onClose} /> : <AddFields onClose={onClose} />}
    </Sheet>
  );
}

function bodyOf(draft: SourceDraft) {
  const {
    sourceId,
    kind,
    provenance,
    seedZone,
    origin,
    gathered,
    collector,
    permit,
    vendor,
    vendorLot,
    pesticideStatement,
    motherLot,
    note,
  } = draft;
  return {
    sourceId,
    kind,
    provenance,
    seedZone,
    origin,
    gathered: gathered || null,
    collector,
    permit,
    vendor,
    vendorLot,
    pesticideStatement,
    motherLotId: fromHere(kind) ? (motherLot?.id ?? null) : null,
    note,
    ...seedBodyOf(kind, draft),
  };
}

function AddFields({ onClose }: { onClose: () => void }) {
  const { sources } = useMessages();
  const [sourceId] = useState(newId);
  const form = useCommandForm({
    command: useCommand('sources.addSource', { title: sources.add }),
    contract: contracts.addSource,
    initial: { ...NEW, sourceId },
    body: (values) => ({ ...bodyOf(values), plantId: values.plant?.id ?? '' }),
    onSaved: ({ code }) => {
      toast({ text: sources.added(code) });
      onClose();
    },
  });
  return (
    <Form {...form.props}>
      <PlantPicker label={sources.plant} {...form.field('plant')} name="plantId" />
      <SourceFields form={form} isNew />
    </Form>
  );
}

function EditFields({
  source: { code: _code, edition, ...source },
  onClose,
}: {
  source: EditedSource;
  onClose: () => void;
}) {
  const { sources, seed, ui } = useMessages();
  const { numbers } = useFormat();
  const form = useCommandForm({
    command: useCommand('sources.editSource', { title: sources.edit }),
    contract: contracts.editSource,
    initial: source,
    body: bodyOf,
    row: { id: 'sourceId', edition },
    fromBody: ({ motherLotId, purity }, called) => ({
      motherLot:
        typeof motherLotId === 'string'
          ? {
              id: motherLotId,
              code: called[motherLotId] ?? (source.motherLot?.id === motherLotId ? source.motherLot.code : ''),
            }
          : null,
      purity: typeof purity === 'number' ? purityTyped(purity) : null,
    }),
    words: {
      purity: { label: seed.purity, value: (purity) => (typeof purity === 'number' ? numbers.part(purity) : '') },
    },
    onSaved: () => {
      toast({ text: ui.saved });
      onClose();
    },
  });
  return (
    <Form {...form.props}>
      <SourceFields form={form} />
    </Form>
  );
}

type FormOf = Pick<
  ReturnType<typeof useCommandForm<'sources.addSource', SourceDraft>>,
  'values' | 'field' | 'busy' | 'state' | 'restart'
>;

function SourceFields({ form, isNew = false }: { form: FormOf; isNew?: boolean }) {
  const { sources, stockIn } = useMessages();
  const { today } = useSession();
  const { kind, plant } = form.values;
  return (
    <>
      <SelectField
        label={sources.kind}
        {...form.field('kind')}
        choices={SOURCE_KINDS.map((each) => ({ value: each, label: sources.kinds[each] }))}
      />
      {fromHere(kind) && (
        <MotherLotField
          plantId={plant?.id ?? null}
          optional={kind !== 'mother-plants'}
          {...form.field('motherLot')}
          name="motherLotId"
        />
      )}
      <TextField label={sources.provenance} hint={sources.provenanceHint} optional {...form.field('provenance')} />
      <TextField label={sources.seedZone} optional {...form.field('seedZone')} />
      <RadioField
        label={sources.origin}
        look="segments"
        {...form.field('origin')}
        choices={SOURCE_ORIGINS.map((each) => ({ value: each, label: sources.origins[each] }))}
      />
      <RoughDayField label={sources.gathered} optional max={today} {...form.field('gathered')} />
      {isBought(kind) ? (
        <>
          <TextField label={sources.vendor} optional {...form.field('vendor')} />
          <TextField label={sources.vendorLot} optional {...form.field('vendorLot')} />
          <TextField
            label={sources.pesticideStatement}
            hint={stockIn.intake.pesticideHint}
            optional
            {...form.field('pesticideStatement')}
          />
        </>
      ) : (
        <>
          <TextField label={sources.collector} optional {...form.field('collector')} />
          <TextField label={sources.permit} optional {...form.field('permit')} />
        </>
      )}
      <SeedFields
        kind={kind}
        isNew={isNew}
        fields={{
          rawGrams: form.field('rawGrams'),
          cleanedGrams: form.field('cleanedGrams'),
          purity: form.field('purity'),
          seedsPerGram: form.field('seedsPerGram'),
          sowFresh: form.field('sowFresh'),
          neverDry: form.field('neverDry'),
          storage: form.field('storage'),
          storedOn: form.field('storedOn'),
        }}
      />
      <TextArea label={sources.note} optional {...form.field('note')} />
      <Submit form={form}>{sources.save}</Submit>
    </>
  );
}
