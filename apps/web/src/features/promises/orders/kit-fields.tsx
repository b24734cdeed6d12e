/** KitFields: which kit and how many, and while that is chosen, how many whole kits can be promised for the day. */
import { keepPreviousData, useQuery } from '@tanstack/react-query';
import type { orders as contracts } from '@rootclock/contracts';
import { isCalendarDate } from '@rootclock/domain';
import { trpc } from '../../../lib/api/index.ts';
import { useMessages } from '../../../messages/index.ts';
import { NumberField, SelectField } from '../../../ui/fields/index.ts';
import { Taxon } from '../../plants/taxon.tsx';
import '../marks/promise-check.css';

/** For whom and when, as far as it is known yet. */
export interface KitFor {
  on: string;
  siteId: string | null;
  clientId: string | null;
  nativesOnly: boolean;
}

export interface KitFieldsProps extends KitFor {
  kits: readonly contracts.KitRow[];
  kitId: string;
  units: number | null;
  onChange: (part: { kitId?: string; units?: number | null }) => void;
}

export function KitFields({ kits, kitId, units, onChange, ...asked }: KitFieldsProps) {
  const { orders } = useMessages();
  const words = orders.kits;
  return (
    <>
      <SelectField
        name="kitId"
        label={words.kit}
        value={kitId}
        onChange={(next) => onChange({ kitId: next })}
        choices={kits.map(({ id, name }) => ({ value: id, label: name }))}
      />
      <NumberField
        name="units"
        label={words.howMany}
        steps
        min={1}
        value={units}
        onChange={(next) => onChange({ units: next })}
      />
      {kits.length === 0 && <p className="field-hint">{words.none}</p>}
      {kitId !== '' && isCalendarDate(asked.on) && <KitCheck kitId={kitId} units={units} {...asked} />}
    </>
  );
}

function KitCheck({ kitId, units, ...asked }: KitFor & { kitId: string; units: number | null }) {
  const { orders } = useMessages();
  const words = orders.kits;
  const { data, isError } = useQuery({
    ...trpc.promises.checkKit.queryOptions({ kitId, ...asked }),
    placeholderData: keepPreviousData,
  });
  if (!data)
    return (
      <p className="promise-check" role="status">
        {isError ? '' : words.checking}
      </p>
    );
  const isShort = units !== null && units > data.kits;
  return (
    <div className={`promise-check ${isShort ? 'promise-check-short' : ''}`}>
      <p role="status">
        <span className="promise-check-word">
          {isShort ? words.short(data.kits, units, data.on) : words.most(data.kits, data.on)}
        </span>
      </p>
      <ul className="plain-list">
        {data.components.map((component) => (
          <li key={`${component.plantId}/${component.containerId}`}>
            <Taxon name={component.scientificName} />, {component.containerName}:{' '}
            {words.free(component.promisableUnits, component.units)}
          </li>
        ))}
      </ul>
    </div>
  );
}
