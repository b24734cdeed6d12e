/**
 * Potting: both sides are counted. The sheet stays open, and container, place and day stay filled in, so that a further lot costs a
 * number and a tap; plants follow the cells emptied until somebody types another number.
 */
import { propagation as contracts } from '@rootclock/contracts';
import { isUnitOnePlant } from '@rootclock/domain';
import { useEffect, useRef, useState } from 'react';
import { useEntryDay } from '../../../lib/entry-day.ts';
import { useFormat } from '../../../lib/format/index.ts';
import { Submit, useCommandForm } from '../../../lib/form/index.ts';
import { newId } from '../../../lib/ids.ts';
import { useCommand } from '../../../lib/outbox/index.ts';
import { isText, useRemembered } from '../../../lib/remember.ts';
import { useMessages } from '../../../messages/index.ts';
import { toast } from '../../../ui/feedback/index.ts';
import { DateField, NumberField, RoughDayField } from '../../../ui/fields/index.ts';
import { Form } from '../../../ui/form/index.ts';
import { ContainerPicker, type PickedContainer } from '../../plants/container-picker.tsx';
import { PlaceSelect } from '../place-select.tsx';
import { FromPlace } from '../sheets/from-place.tsx';
import type { SheetProps } from '../sheet-props.ts';
import { useReverse } from '../use-reverse.ts';
import { IntoField } from './into-field.tsx';
import { lotsStillOpen, NEW_LOT } from './lots-still-open.ts';
import { PottedNow, type PottedLot } from './potted-now.tsx';

/** The fields that change with every lot; what is wrong with another one must not hide among those that stay as before. */
const NUMBERS = ['lots.0.unitsOut', 'lots.0.pottedUnits'];

interface Values {
  into: string;
  container: PickedContainer | null;
  placeId: string;
  fromPlaceId: string;
  unitsOut: number | null;
  /** Null while it follows the units emptied. */
  pottedUnits: number | null;
  firstAlive: string;
  readyOn: string;
  happenedOn: string;
}

export function PotSheet({ batch, onClose }: SheetProps) {
  const { propagation } = useMessages();
  const { sheet: say } = propagation;
  const { dates } = useFormat();
  const { day, today, keepDay } = useEntryDay('propagation');
  const [place, keepPlace] = useRemembered('propagation.potPlace', '', isText);
  const [lotId, setLotId] = useState(newId);
  const [potted, setPotted] = useState<PottedLot[]>([]);
  const reverse = useReverse();
  const numbers = useRef<HTMLDivElement>(null);
  const target: PickedContainer | null = batch.targetContainerId
    ? { id: batch.targetContainerId, name: batch.targetContainerName ?? '' }
    : null;
  const asksFirstAlive = batch.needsFirstAlive && batch.firstAlive === null;
  const follows = isUnitOnePlant(batch.unit);
  const plantsOf = (v: Values): number | null => v.pottedUnits ?? (follows ? v.unitsOut : null);

  const initial: Values = {
    into: NEW_LOT,
    container: target,
    placeId: place,
    fromPlaceId: '',
    unitsOut: null,
    pottedUnits: null,
    firstAlive: '',
    readyOn: '',
    happenedOn: day,
  };
  const form = useCommandForm({
    command: useCommand('propagation.potBatch', { title: `${say.potTitle}: ${batch.code}` }),
    contract: contracts.potBatch,
    initial,
    body: (v: Values) => ({
      batchId: batch.batchId,
      happenedOn: v.happenedOn,
      firstAlive: asksFirstAlive ? v.firstAlive || null : null,
      lots: [
        {
          ...(v.into === NEW_LOT
            ? { lotId, into: 'new', containerId: v.container?.id ?? null }
            : { lotId: v.into, into: 'existing' }),
          placeId: v.placeId || undefined,
          fromPlaceId: v.fromPlaceId || null,
          unitsOut: v.unitsOut ?? (follows ? undefined : 0),
          pottedUnits: plantsOf(v),
          readyOn: v.readyOn || null,
        },
      ],
    }),
    onSaved: ({ entryId, lots }, v) => {
      const made = lots[0] ?? { lotId: v.into, code: batch.lots.find((lot) => lot.lotId === v.into)?.code ?? '' };
      const count = plantsOf(v) ?? 0;
      keepDay(v.happenedOn);
      keepPlace(v.placeId);
      setPotted((before) => [...before, { entryId, lotId: made.lotId, code: made.code, plants: count }]);
      toast({ text: say.potSaved(count, made.code), undo: () => reverse(entryId) });
      setLotId(newId());
      form.restart({ ...v, into: NEW_LOT, unitsOut: null, pottedUnits: null, firstAlive: '' });
      numbers.current?.querySelector('input')?.focus();
    },
  });
  const { values, set, field } = form;
  const isOver = batch.closedOn !== null;
  useEffect(() => {
    if (isOver) onClose();
  }, [isOver, onClose]);
  const open = lotsStillOpen(batch.lots, values.happenedOn);

  const elsewhere = Object.keys(form.props.errors).some((name) => !NUMBERS.includes(name));
  const details = (
    <>
      <IntoField lots={open} value={values.into} onChange={(into) => set({ into })} />
      {values.into === NEW_LOT && (
        <ContainerPicker
          name="lots.0.containerId"
          label={say.potContainer}
          kinds={['pot', 'tray', 'ground']}
          value={values.container}
          onChange={(container) => set({ container })}
        />
      )}
      <FromPlace {...field('fromPlaceId')} name="lots.0.fromPlaceId" batch={batch} optional />
      <PlaceSelect {...field('placeId')} name="lots.0.placeId" label={say.toPlace} />
      {asksFirstAlive && (
        <RoughDayField
          {...field('firstAlive')}
          label={say.firstAlive}
          hint={say.firstAliveHint}
          max={values.happenedOn}
        />
      )}
      {values.into === NEW_LOT && (
        <DateField
          {...field('readyOn')}
          name="lots.0.readyOn"
          label={say.ready}
          hint={say.readyHint}
          optional
          min={values.happenedOn}
        />
      )}
      <DateField {...field('happenedOn')} label={say.day} min={batch.startedOn} max={today} />
    </>
  );

  return (
    <Form {...form.props}>
      {potted.length > 0 && <PottedNow lots={potted} />}
      <div ref={numbers} className="stack">
        <NumberField
          {...field('unitsOut')}
          name="lots.0.unitsOut"
          label={say.unitsOut(batch.unit)}
          optional={!follows}
          hint={say.unitsOutHint[batch.unit] ?? say.left(propagation.units(batch.standingUnits, batch.unit))}
        />
      </div>
      <NumberField
        name="lots.0.pottedUnits"
        label={say.potted}
        hint={say.pottedHint}
        value={plantsOf(values)}
        onChange={(pottedUnits) => set({ pottedUnits })}
        min={1}
      />
      {potted.length === 0 ? (
        details
      ) : (
        <details className="pot-before" open={elsewhere}>
          <summary>{say.asBefore(values.container?.name ?? '', dates.short(values.happenedOn))}</summary>
          <div className="stack">{details}</div>
        </details>
      )}
      <Submit form={form}>{say.potSave}</Submit>
    </Form>
  );
}
