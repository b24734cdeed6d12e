/** BoughtLine: one lot of a delivery: what it is, what the invoice says, what arrived, and what the vendor stated of it. */
import { BOUGHT_FORMS, COUNT_KINDS, SOURCE_ORIGINS } from '@rootclock/domain';
import { useState } from 'react';
import { useSession } from '../../../../lib/api/index.ts';
import { useMessages } from '../../../../messages/index.ts';
import { Button } from '../../../../ui/action/index.ts';
import {
  CheckboxField,
  NumberField,
  RadioField,
  RoughDayField,
  SelectField,
  TextField,
} from '../../../../ui/fields/index.ts';
import { ContainerPicker } from '../../../plants/container-picker.tsx';
import { PlantPicker } from '../../../plants/plant-picker.tsx';
import { PlacePicker } from '../../places/place-picker.tsx';
import type { BoughtLine as Line } from './bought-draft.ts';

export interface BoughtLineProps {
  line: Line;
  index: number;
  onChange: (part: Partial<Line>) => void;
  /** Left out where there is only one line. */
  onRemove?: (() => void) | undefined;
}

export function BoughtLine({ line, index, onChange, onRemove }: BoughtLineProps) {
  const { intake, forms } = useMessages().stockIn;
  const nth = index + 1;
  const [more, setMore] = useState(false);
  const field = <Key extends keyof Line & string>(key: Key, name: string = key) => ({
    name: `lines.${index}.${name}`,
    value: line[key],
    onChange: (value: Line[Key]) => onChange({ [key]: value }),
  });
  const difference =
    line.invoicedUnits === null || line.receivedUnits === null ? null : line.receivedUnits - line.invoicedUnits;
  return (
    <fieldset className="bought-line">
      <legend>{intake.line(nth)}</legend>
      <div className="bought-fields">
        <PlantPicker {...field('plant', 'plantId')} label={intake.inLine(intake.plant, nth)} />
        <RadioField
          {...field('form')}
          label={intake.inLine(intake.form, nth)}
          look="segments"
          choices={BOUGHT_FORMS.map((form) => ({ value: form, label: forms[form] }))}
        />
        <ContainerPicker {...field('container', 'containerId')} label={intake.inLine(intake.container, nth)} />
        <PlacePicker {...field('place', 'placeId')} label={intake.inLine(intake.place, nth)} />
        <NumberField {...field('invoicedUnits')} label={intake.inLine(intake.invoiced, nth)} optional />
        <NumberField {...field('receivedUnits')} label={intake.inLine(intake.received, nth)} />
      </div>
      <p role="status" className="figure">
        {difference === null || Number.isNaN(difference) ? '' : intake.difference(difference)}
      </p>
      <div className="row">
        <Button look="quiet" aria-expanded={more} onClick={() => setMore(!more)}>
          {intake.inLine(intake.moreOfLine, nth)}
        </Button>
        {onRemove && (
          <Button look="quiet" aria-label={intake.removeRow(nth)} onClick={onRemove}>
            {intake.remove}
          </Button>
        )}
      </div>
      {more && <Stated line={line} nth={nth} field={field} />}
    </fieldset>
  );
}

interface FieldOf {
  <Key extends keyof Line & string>(
    key: Key,
    name?: string,
  ): { name: string; value: Line[Key]; onChange: (value: Line[Key]) => void };
}

function Stated({ line, nth, field }: { line: Line; nth: number; field: FieldOf }) {
  const {
    stockIn: { intake, countKinds },
    sources,
  } = useMessages();
  const { today } = useSession();
  const label = (word: string) => intake.inLine(word, nth);
  const countKind = field('countKind');
  return (
    <div className="bought-fields">
      <TextField {...field('vendorLot')} label={label(intake.vendorLot)} optional />
      <TextField {...field('provenance')} label={label(intake.provenance)} optional />
      <TextField {...field('seedZone')} label={label(intake.seedZone)} optional />
      <RadioField
        {...field('origin')}
        label={label(intake.origin)}
        look="segments"
        choices={SOURCE_ORIGINS.map((origin) => ({ value: origin, label: sources.origins[origin] }))}
      />
      {line.form !== 'bare-root' && (
        <>
          <RoughDayField {...field('sown')} label={label(intake.sown)} optional max={today} />
          <NumberField
            {...field('germinationDays')}
            label={label(intake.germinationDays)}
            hint={intake.germinationHint}
            optional
          />
        </>
      )}
      {line.form === 'pots' && (
        <RoughDayField {...field('inPotSince')} label={label(intake.inPotSince)} optional max={today} />
      )}
      <SelectField
        {...countKind}
        optional="unsaid"
        label={label(intake.countKind)}
        onChange={(kind) => countKind.onChange(kind || 'counted')}
        choices={COUNT_KINDS.map((kind) => ({ value: kind, label: countKinds[kind] }))}
      />
      <CheckboxField {...field('rootChecked')} label={label(intake.rootChecked)} />
    </div>
  );
}
