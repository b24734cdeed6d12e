/** The form that starts a batch: a plant and its source, how and in what it is counted, where it stands and what is expected of it. */
import { propagation as contracts } from '@rootclock/contracts';
import { containersForUnit, isCalendarDate, PROPAGATION_METHODS, UNITS_FOR_METHOD } from '@rootclock/domain';
import { useQuery } from '@tanstack/react-query';
import { useNavigate } from '@tanstack/react-router';
import { useState } from 'react';
import { trpc, useSession } from '../../../lib/api/index.ts';
import { Submit, useCommandForm } from '../../../lib/form/index.ts';
import { newId } from '../../../lib/ids.ts';
import { useCommand } from '../../../lib/outbox/index.ts';
import { paths } from '../../../lib/paths.ts';
import { useMessages } from '../../../messages/index.ts';
import { toast } from '../../../ui/feedback/index.ts';
import { DateField, RadioField } from '../../../ui/fields/index.ts';
import { FieldGroup, Form } from '../../../ui/form/index.ts';
import { ContainerPicker } from '../../plants/container-picker.tsx';
import { PlantPicker } from '../../plants/plant-picker.tsx';
import { PlaceSelect } from '../place-select.tsx';
import { useReverse } from '../use-reverse.ts';
import { ExpectFields } from './expect-fields.tsx';
import { ProtocolFields } from './protocol-fields.tsx';
import { Reckoning } from './reckoning.tsx';
import { SeedFields } from './seed-fields.tsx';
import { SourceSelect } from './source-select.tsx';
import { afterPacks, byMethod, countsTrays, startBody, type StartValues, underProtocol } from './start-values.ts';
import { UnitsFields } from './units-fields.tsx';
import { useSuggestion } from './use-suggestion.ts';

export interface StartFormProps {
  initial: StartValues;
  /** A version that is offered although it is no longer the current one. */
  askedVersionId: string | null;
  /** Called with place and day of a batch that was started, for the next one. */
  onStarted: (placeId: string, day: string) => void;
}

export function StartForm({ initial, askedVersionId, onStarted }: StartFormProps) {
  const { propagation } = useMessages();
  const { form: say } = propagation;
  const { today } = useSession();
  const navigate = useNavigate();
  const reverse = useReverse();
  const [batchId] = useState(newId);
  const form = useCommandForm({
    command: useCommand('propagation.startBatch', { title: propagation.start }),
    contract: contracts.startBatch,
    initial,
    body: (values: StartValues) => startBody(batchId, values),
    onSaved: ({ code, entryId }, values) => {
      onStarted(values.placeId, values.happenedOn);
      toast({ text: say.saved(code), undo: () => reverse(entryId) });
      void navigate({ to: paths.batch(batchId) });
    },
  });
  const { values, set, field } = form;
  const plantId = values.plantId?.id ?? null;
  const { data: choices } = useQuery({
    ...trpc.propagation.readStartChoices.queryOptions({ plantId: plantId ?? '', versionId: askedVersionId }),
    enabled: plantId !== null,
  });
  const known = plantId === null ? null : (choices ?? null);
  const protocol = known?.protocols.find(({ versionId }) => versionId === values.protocolVersionId) ?? null;
  const { suggestion, shown } = useSuggestion(values);
  const kinds = containersForUnit(values.unit);
  const setPacks = (packsId: string) =>
    set({
      packsId,
      packs: packsId ? (values.packs ?? 0) : null,
      ...(packsId && protocol ? { stagePosition: String(afterPacks(protocol)) } : {}),
    });

  return (
    <Form {...form.props} onSubmit={() => form.submit(shown)}>
      <FieldGroup legend={say.what}>
        <PlantPicker
          name="plantId"
          value={values.plantId}
          onChange={(plant) =>
            set({ plantId: plant, sourceId: '', protocolVersionId: '', stagePosition: '', packsId: '', packs: null })
          }
        />
        <SourceSelect
          {...field('sourceId')}
          label={say.source}
          plantId={plantId}
          onChange={(sourceId) => set({ sourceId, packsId: '', packs: null })}
        />
        <ProtocolFields
          protocols={known?.protocols ?? []}
          chosen={protocol}
          stagePosition={values.stagePosition}
          startedOn={isCalendarDate(values.happenedOn) ? values.happenedOn : null}
          onProtocol={(chosen) =>
            set(chosen ? underProtocol(chosen, values.packsId !== '') : { protocolVersionId: '', stagePosition: '' })
          }
          onStage={(stagePosition) => set({ stagePosition })}
        />
        <RadioField
          name="method"
          label={say.method}
          value={values.method}
          onChange={(method) => set(byMethod(method, values))}
          look="segments"
          choices={PROPAGATION_METHODS.map((value) => ({ value, label: propagation.methods[value] }))}
        />
      </FieldGroup>
      <FieldGroup legend={say.howMany}>
        <RadioField
          name="unit"
          label={say.unit}
          hint={say.unitHints[values.unit]}
          look="segments"
          value={values.unit}
          onChange={(unit) => set({ unit, containerId: null })}
          choices={UNITS_FOR_METHOD[values.method].map((value) => ({ value, label: propagation.unitNames[value] }))}
        />
        <ContainerPicker
          name="containerId"
          label={say.container}
          optional={kinds.includes(null)}
          value={values.containerId}
          kinds={kinds.filter((kind) => kind !== null)}
          onChange={(container) =>
            set({
              containerId: container && {
                id: container.id,
                name: container.name,
                cells: container.cells,
                volumeMl: container.volumeMl,
              },
            })
          }
        />
        {protocol && suggestion && <Reckoning values={values} protocol={protocol} suggestion={suggestion} set={set} />}
        <UnitsFields
          unit={values.unit}
          cells={values.containerId?.cells ?? null}
          counts={countsTrays(values)}
          trays={field('trays')}
          units={field('units')}
          onCounts={(inTrays) => set({ inTrays })}
        />
        {values.method === 'seed' && (
          <SeedFields values={values} choices={known} protocol={protocol} set={set} onPacks={setPacks} />
        )}
      </FieldGroup>
      <FieldGroup legend={say.where}>
        <PlaceSelect {...field('placeId')} label={say.place} />
        <DateField {...field('happenedOn')} label={say.day} max={today} />
      </FieldGroup>
      <FieldGroup legend={say.expect}>
        <ExpectFields values={shown} suggestion={suggestion} set={set} />
      </FieldGroup>
      <Submit form={form}>{say.save}</Submit>
    </Form>
  );
}
