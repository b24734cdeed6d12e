/** The lines of a new order. A new one begins with the container of the one before; what nobody filled in is left out. */
import type { orders as contracts } from '@rootclock/contracts';
import { useState } from 'react';
import { newCommandId, newId } from '../../../lib/ids.ts';
import { useMessages } from '../../../messages/index.ts';
import { Button } from '../../../ui/action/index.ts';
import { NumberField } from '../../../ui/fields/index.ts';
import { FieldGroup } from '../../../ui/form/index.ts';
import { ChooseKitSheet } from './add-kit-sheets.tsx';
import { useBeds } from '../../orders/pickers/beds.ts';
import {
  ConditionFields,
  conditionsBody,
  NO_CONDITIONS,
  type Conditions,
} from '../../orders/pickers/condition-fields.tsx';
import { ItemPickers, type Item } from '../../orders/pickers/item-pickers.tsx';
import { PromiseCheck } from '../marks/promise-check.tsx';
import { RuleOffers } from '../../orders/pickers/rule-offers.tsx';
import './new-lines.css';

export interface NewLine extends Item {
  key: string;
  lineId: string;
  units: number | null;
  conditions: Conditions;
  /** The kit that it came with; whoever then changes what or how many makes it a line of its own. */
  kit: { kitId: string; name: string; units: number } | null;
}

export const emptyLine = (before?: NewLine): NewLine => ({
  key: newCommandId(),
  lineId: newId(),
  plant: null,
  container: before?.container ?? null,
  units: null,
  conditions: { ...NO_CONDITIONS, bedId: before?.conditions.bedId ?? '' },
  kit: null,
});

/** Nobody has said what or how many yet; a container alone was filled in by the line before. */
export const isBlank = (line: NewLine): boolean => line.plant === null && line.units === null;

export const lineBody = (line: NewLine) => ({
  lineId: line.lineId,
  plantId: line.plant?.id ?? '',
  containerId: line.container?.id ?? '',
  units: line.units,
  ...conditionsBody(line.conditions),
  kit: line.kit && { kitId: line.kit.kitId, units: line.kit.units },
});

/** The lines of so many kits, in place of those that nobody filled in. */
function withKit(lines: readonly NewLine[], kit: contracts.KitRow, units: number): NewLine[] {
  const added = kit.components.map((component): NewLine => ({
    ...emptyLine(lines.at(-1)),
    plant: { id: component.plantId, scientificName: component.scientificName },
    container: { id: component.containerId, name: component.containerName },
    units: component.units * units,
    kit: { kitId: kit.id, name: kit.name, units },
  }));
  return [...lines.filter((line) => !isBlank(line)), ...added];
}

export interface NewLinesProps {
  lines: readonly NewLine[];
  onChange: (lines: NewLine[]) => void;
  on: string;
  onDay: (on: string) => void;
  siteId: string | null;
  clientId: string | null;
  nativesOnly: boolean;
}

export function NewLines({ lines, onChange, on, onDay, siteId, clientId, nativesOnly }: NewLinesProps) {
  const { orders } = useMessages();
  const words = orders.list;
  const beds = useBeds(siteId);
  const [choosing, setChoosing] = useState(false);
  const sent = lines.filter((line) => !isBlank(line));
  return (
    <section className="new-lines" aria-label={words.linesLegend}>
      {lines.map((line, index) => {
        const set = (part: Partial<NewLine>) =>
          onChange(lines.map((each) => (each.key === line.key ? { ...each, ...part } : each)));
        // Errors come with the place in what was sent, where blank lines are left out.
        const path = isBlank(line) ? `blank.${line.key}.` : `lines.${sent.indexOf(line)}.`;
        return (
          <div key={line.key} className="panel">
            <FieldGroup legend={words.lineLegend(index + 1)}>
              {line.kit && <p className="field-hint">{orders.kits.partOf(line.kit.name, line.kit.units)}</p>}
              <ItemPickers path={path} value={line} onChange={(item) => set({ ...item, kit: null })} />
              <NumberField
                name={`${path}units`}
                label={orders.units}
                steps
                min={1}
                value={line.units}
                onChange={(units) => set({ units, kit: null })}
              />
              <PromiseCheck
                item={line}
                units={line.units}
                on={on}
                siteId={siteId}
                clientId={clientId}
                nativesOnly={nativesOnly}
                conditions={line.conditions}
                onConditions={(conditions) => set({ conditions })}
                onDay={onDay}
              />
              <RuleOffers
                item={line}
                siteId={siteId}
                nativesOnly={nativesOnly}
                value={line.conditions}
                onChange={(conditions) => set({ conditions })}
              />
              <details className="foldable">
                <summary>{words.conditions}</summary>
                <div className="stack">
                  <ConditionFields
                    path={path}
                    value={line.conditions}
                    onChange={(conditions) => set({ conditions })}
                    beds={beds}
                  />
                </div>
              </details>
              {lines.length > 1 && (
                <div>
                  <Button look="quiet" onClick={() => onChange(lines.filter((each) => each.key !== line.key))}>
                    {words.removeLine(index + 1)}
                  </Button>
                </div>
              )}
            </FieldGroup>
          </div>
        );
      })}
      <div className="row">
        <Button onClick={() => onChange([...lines, emptyLine(lines.at(-1))])}>{words.addLine}</Button>
        <Button onClick={() => setChoosing(true)}>{orders.kits.addToOrder}</Button>
      </div>
      {choosing && (
        <ChooseKitSheet
          asked={{ on, siteId, clientId, nativesOnly }}
          onChoose={(kit, units) => onChange(withKit(lines, kit, units))}
          onClose={() => setChoosing(false)}
        />
      )}
    </section>
  );
}
