/** The form that starts a batch: a plant and its source, how and in what it is counted, where it stands and what is expected of it. */
import { propagation as contracts } from '@rootclock/contracts';
import { containersForUnit, type BatchUnit, type PropagationMethod, PROPAGATION_METHODS, UNITS_FOR_METHOD } from '@rootclock/domain';
import { useNavigate } from '@tanstack/react-router';
import { useState } from 'react';
import { useSession } from '../../../lib/api/index.ts';
import { Submit, useCommandForm } from '../../../lib/form/index.ts';
import { newId } from '../../../lib/ids.ts';
import { useCommand } from '../../../lib/outbox/index.ts';
import { paths } from '../../../lib/paths.ts';
import { isText, useRemembered } from '../../../lib/remember.ts';
import { useMessages } from '../../../messages/index.ts';
import { toast } from '../../../ui/feedback/index.ts';
import { DateField, NumberField, RadioField, TextArea } from '../../../ui/fields/index.ts';
import { FieldGroup, Form } from '../../../ui/form/index.ts';
import { PageHeader } from '../../../ui/layout/index.ts';
import { ContainerPicker, type PickedContainer } from '../../plants/container-picker.tsx';
import { PlantPicker, type PickedPlant } from '../../plants/plant-picker.tsx';
import { PlaceSelect } from '../place-select.tsx';
import { useReverse } from '../use-reverse.ts';
import { SourceSelect } from './source-select.tsx';
import { UnitsFields } from './units-fields.tsx';

interface Values {
  plantId: PickedPlant | null;
  sourceId: string;
  method: PropagationMethod;
  unit: BatchUnit;
  containerId: (PickedContainer & { cells: number | null }) | null;
  inTrays: boolean;
  trays: number | null;
  units: number | null;
  seedsSown: number | null;
  placeId: string;
  happenedOn: string;
  targetContainerId: PickedContainer | null;
  cautiousUnits: number | null;
  readyOn: string;
  note: string;
}

export function StartBatchPage() {
  const { propagation } = useMessages();
  const { form: say } = propagation;
  const { today } = useSession();
  const navigate = useNavigate();
  const reverse = useReverse();
  const [batchId] = useState(newId);
  const [place, keepPlace] = useRemembered('propagation.place', '', isText);
  const [day, keepDay] = useRemembered('propagation.day', today, isText);
  const initial: Values = {
    plantId: null, sourceId: '', method: 'seed', unit: 'cell', containerId: null, inTrays: true, trays: null, units: null, seedsSown: null, placeId: place, happenedOn: day,
    targetContainerId: null, cautiousUnits: null, readyOn: '', note: '',
  };
  const form = useCommandForm({
    command: useCommand('propagation.startBatch', { title: propagation.start }),
    contract: contracts.startBatch,
    initial,
    body: (v: Values) => ({
      batchId, plantId: v.plantId?.id, sourceId: v.sourceId || undefined, method: v.method, unit: v.unit, containerId: v.containerId?.id ?? null,
      // An empty number of trays must be said beside the trays, not beside the units that are not asked for.
      ...(countsTrays(v) ? { trays: v.trays ?? Number.NaN } : { units: v.units }), seedsSown: v.method === 'seed' ? v.seedsSown : null, placeId: v.placeId || undefined, happenedOn: v.happenedOn,
      targetContainerId: v.targetContainerId?.id ?? null, cautiousUnits: v.cautiousUnits ?? 0, readyOn: v.readyOn || null, note: v.note,
    }),
    onSaved: ({ code, entryId }, v) => {
      keepPlace(v.placeId);
      keepDay(v.happenedOn);
      toast({ text: say.saved(code), undo: () => reverse(entryId) });
      void navigate({ to: paths.batch(batchId) });
    },
  });
  const { values, set, field } = form;
  const setMethod = (method: PropagationMethod) => {
    const [usual = 'cell'] = UNITS_FOR_METHOD[method];
    set({ method, ...(UNITS_FOR_METHOD[method].includes(values.unit) ? {} : { unit: usual, containerId: null }) });
  };
  const kinds = containersForUnit(values.unit);

  return (
    <div className="stack">
      <PageHeader title={say.title} back={{ to: paths.propagation(), label: propagation.title }} />
      <Form {...form.props}>
        <FieldGroup legend={say.what}>
          <PlantPicker name="plantId" value={values.plantId} onChange={(plant) => set({ plantId: plant, sourceId: '' })} />
          <SourceSelect {...field('sourceId')} label={say.source} plantId={values.plantId?.id ?? null} />
          <RadioField name="method" label={say.method} value={values.method} onChange={setMethod} look="segments" choices={PROPAGATION_METHODS.map((value) => ({ value, label: propagation.methods[value] }))} />
        </FieldGroup>
        <FieldGroup legend={say.howMany}>
          <RadioField name="unit" label={say.unit} hint={say.unitHints[values.unit]} look="segments" value={values.unit} onChange={(unit) => set({ unit, containerId: null })}
            choices={UNITS_FOR_METHOD[values.method].map((value) => ({ value, label: propagation.unitNames[value] }))} />
          <ContainerPicker name="containerId" label={say.container} optional={kinds.includes(null)} value={values.containerId} kinds={kinds.filter((kind) => kind !== null)}
            onChange={(container) => set({ containerId: container && { id: container.id, name: container.name, cells: container.cells } })} />
          <UnitsFields unit={values.unit} cells={values.containerId?.cells ?? null} counts={countsTrays(values)} trays={field('trays')} units={field('units')} onCounts={(inTrays) => set({ inTrays })} />
          {values.method === 'seed' && <NumberField {...field('seedsSown')} label={say.seeds} hint={say.seedsHint} optional />}
        </FieldGroup>
        <FieldGroup legend={say.where}>
          <PlaceSelect {...field('placeId')} label={say.place} />
          <DateField {...field('happenedOn')} label={say.day} max={today} />
        </FieldGroup>
        <FieldGroup legend={say.expect}>
          <ContainerPicker name="targetContainerId" label={say.target} optional value={values.targetContainerId} kinds={['pot', 'tray']} onChange={(container) => set({ targetContainerId: container })} />
          <NumberField {...field('cautiousUnits')} label={say.cautious} hint={say.cautiousHint} optional />
          <DateField {...field('readyOn')} label={say.ready} optional />
          <TextArea {...field('note')} label={say.note} optional rows={2} />
        </FieldGroup>
        <Submit form={form}>{say.save}</Submit>
      </Form>
    </div>
  );
}

/** Whole trays can be counted where the tray says how many cells it has. */
const countsTrays = (values: Values): boolean => values.unit === 'cell' && values.inTrays && (values.containerId?.cells ?? 0) > 0;
