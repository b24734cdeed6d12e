/** Plants that were never pulled and went into the ground all the same: from a lot at its place, or found there. */
import { useQuery } from '@tanstack/react-query';
import type { promises as contracts } from '@rootclock/contracts';
import { trpc } from '../../../lib/api/index.ts';
import { newCommandId } from '../../../lib/ids.ts';
import { useMessages } from '../../../messages/index.ts';
import { Button } from '../../../ui/action/index.ts';
import { NumberField, SelectField } from '../../../ui/fields/index.ts';
import { FieldGroup } from '../../../ui/form/index.ts';
import { Section } from '../../../ui/layout/index.ts';

export interface ExtraRow {
  key: string;
  lineId: string;
  /** Plant and container of the line or of one of its alternatives, as `plant/container`. */
  item: string;
  lotId: string;
  /** A place's id, or `found`. */
  from: string;
  units: number | null;
}

export const extraBody = ({ lineId, lotId, from, units }: ExtraRow) => ({
  lineId,
  lotId,
  units: 0,
  extra: from === 'found' ? { from: 'found' as const, units } : { from: 'place' as const, placeId: from, units },
});

export interface ExtraRowsProps {
  order: contracts.OrderPage;
  rows: readonly ExtraRow[];
  onChange: (rows: ExtraRow[]) => void;
  /** The place of the first extra in what is sent. */
  first: number;
}

export function ExtraRows({ order, rows, onChange, first }: ExtraRowsProps) {
  const { gardens } = useMessages();
  const words = gardens.planting;
  const lines = order.lineRows.filter((line) => line.withdrawnOn === null);
  if (lines.length === 0) return null;
  const only = lines.length === 1 ? lines[0] : undefined;
  const add = () =>
    onChange([
      ...rows,
      {
        key: newCommandId(),
        lineId: only?.id ?? '',
        item: only ? `${only.plantId}/${only.containerId}` : '',
        lotId: '',
        from: '',
        units: null,
      },
    ]);
  return (
    <Section title={words.extraTitle}>
      <p>{words.extraLead}</p>
      {rows.map((row, index) => (
        <div key={row.key} className="panel">
          <FieldGroup legend={words.extraLegend(index + 1)}>
            <ExtraFields
              lines={lines}
              row={row}
              path={`rows.${first + index}.`}
              onChange={(part) => onChange(rows.map((each) => (each.key === row.key ? { ...each, ...part } : each)))}
            />
            <div>
              <Button look="quiet" onClick={() => onChange(rows.filter((each) => each.key !== row.key))}>
                {words.removeExtra(index + 1)}
              </Button>
            </div>
          </FieldGroup>
        </div>
      ))}
      <div>
        <Button onClick={add}>{words.addExtra}</Button>
      </div>
    </Section>
  );
}

interface ExtraFieldsProps {
  lines: readonly contracts.OrderLineRow[];
  row: ExtraRow;
  path: string;
  onChange: (part: Partial<ExtraRow>) => void;
}

function ExtraFields({ lines, row, path, onChange }: ExtraFieldsProps) {
  const { gardens, orders, promises } = useMessages();
  const words = gardens.planting;
  const line = lines.find(({ id }) => id === row.lineId);
  const items = line
    ? [line, ...line.alternatives].map((item) => ({
        value: `${item.plantId}/${item.containerId}`,
        label: `${item.scientificName}, ${item.containerCode}`,
      }))
    : [];
  const [plantId = '', containerId = ''] = row.item.split('/');
  const { data } = useQuery({
    ...trpc.stock.listLots.queryOptions({ plantId, containerId, state: 'open', perPage: 100 }),
    enabled: row.item !== '',
  });
  const lots = data?.rows ?? [];
  const places = lots.find(({ lotId }) => lotId === row.lotId)?.places ?? [];
  return (
    <>
      {lines.length > 1 && (
        <SelectField
          name={`${path}lineId`}
          label={words.extraLine}
          value={row.lineId}
          onChange={(lineId) => {
            const next = lines.find(({ id }) => id === lineId);
            onChange({ lineId, item: next ? `${next.plantId}/${next.containerId}` : '', lotId: '', from: '' });
          }}
          choices={lines.map((each) => ({
            value: each.id,
            label: [`${each.scientificName}, ${each.containerCode}`, each.bedName].filter(Boolean).join(', '),
          }))}
        />
      )}
      {items.length > 1 && (
        <SelectField
          name={`${path}item`}
          label={orders.plant}
          value={row.item}
          onChange={(item) => onChange({ item, lotId: '', from: '' })}
          choices={items}
        />
      )}
      <SelectField
        name={`${path}lotId`}
        label={words.extraLot}
        hint={row.item !== '' && data && lots.length === 0 ? words.noLots : undefined}
        value={row.lotId}
        onChange={(lotId) => onChange({ lotId, from: '' })}
        choices={lots.map(({ lotId, code, onHandUnits }) => ({
          value: lotId,
          label: `${code}: ${promises.line.onHand(onHandUnits)}`,
        }))}
      />
      <SelectField
        name={`${path}extra.placeId`}
        label={words.extraFrom}
        value={row.from}
        onChange={(from) => onChange({ from })}
        choices={[
          ...places.map(({ placeId, code, units }) => ({ value: placeId, label: words.fromPlace(code, units) })),
          { value: 'found', label: words.fromFound },
        ]}
      />
      <NumberField
        name={`${path}extra.units`}
        label={words.extraUnits}
        steps
        min={1}
        value={row.units}
        onChange={(units) => onChange({ units })}
      />
    </>
  );
}
