/** OpeningRow: one lot of the list. On a wide screen a line of cells; on a phone a card that is open while it is worked on. */
import { COUNT_KINDS, SOURCE_KINDS } from '@rootclock/domain';
import { memo, useRef, useState } from 'react';
import { useMessages } from '../../../../messages/index.ts';
import { Button } from '../../../../ui/action/index.ts';
import { CheckboxField, SelectField, TextField } from '../../../../ui/fields/index.ts';
import { ContainerCell, PlaceCell, PlantCell } from '../cells/cells.tsx';
import { DayCell } from '../cells/day-cell.tsx';
import { isBlank, type OpeningRow as Row } from './opening-draft.ts';
import { useEnter } from './use-enter.ts';

/** What can be done with the rows of the list; the same functions at every drawing. */
export interface RowWork {
  activate: (index: number) => void;
  change: (lotId: string, part: Partial<Row>) => void;
  next: (index: number) => void;
  remove: (lotId: string) => void;
}

export interface OpeningRowProps {
  row: Row;
  index: number;
  /** On a phone only the row worked on is open. */
  active: boolean;
  work: RowWork;
}

const REQUIRED = ['plant', 'units', 'container', 'place'] as const;
const typedIn = (row: Row, cell: (typeof REQUIRED)[number]): string =>
  (cell === 'units' ? row.units : row[cell].text).trim();

export const OpeningRow = memo(function OpeningRow({ row, index, active, work }: OpeningRowProps) {
  const { intake } = useMessages().stockIn;
  const [more, setMore] = useState(false);
  const onChange = (part: Partial<Row>) => work.change(row.lotId, part);
  const onActivate = () => work.activate(index);
  const cells = useRef<HTMLDivElement>(null);
  const nth = index + 1;
  const at = (name: string) => ({ name: `rows.${index}.${name}` });

  // Enter means "go on": to what this row still needs, else to the next row.
  const field = useRef<HTMLFieldSetElement>(null);
  useEnter(field, () => {
    const missing = REQUIRED.find((cell) => typedIn(row, cell) === '');
    const input = missing && cells.current?.querySelector<HTMLInputElement>(`[data-cell="${missing}"] input`);
    if (input) input.focus();
    else work.next(index);
  });
  const summary = [row.plant.text, row.units, row.container.text, row.place.text]
    .filter((word) => word.trim() !== '')
    .join(' · ');

  return (
    <fieldset ref={field} className="opening-row" data-active={active || undefined}>
      <legend className="opening-legend">{intake.row(nth)}</legend>
      <div onFocus={onActivate}>
        <button type="button" className="opening-summary" onClick={onActivate}>
          {intake.openRow(nth, summary || intake.emptyRow)}
        </button>
        <div className="opening-cells" ref={cells}>
          <span className="opening-nth" aria-hidden="true">
            {nth}
          </span>
          <div data-cell="plant">
            <PlantCell
              {...at('plantId')}
              label={intake.inRow(intake.plant, nth)}
              cell={row.plant}
              onCell={(plant) => onChange({ plant })}
            />
          </div>
          <div data-cell="units">
            <TextField
              {...at('units')}
              label={intake.inRow(intake.units, nth)}
              value={row.units}
              onChange={(units) => onChange({ units })}
              inputMode="numeric"
              autoComplete="off"
            />
          </div>
          <div data-cell="container">
            <ContainerCell
              {...at('containerId')}
              label={intake.inRow(intake.container, nth)}
              cell={row.container}
              onCell={(container) => onChange({ container })}
              // Nobody digs a bed up to count it.
              onKind={(kind) => onChange({ countKind: kind === 'ground' ? 'estimated' : row.countKind })}
            />
          </div>
          <div data-cell="place">
            <PlaceCell
              {...at('placeId')}
              label={intake.inRow(intake.place, nth)}
              cell={row.place}
              onCell={(place) => onChange({ place })}
            />
          </div>
          <div data-cell="since">
            <DayCell
              {...at('since')}
              label={intake.inRow(intake.since, nth)}
              optional="unsaid"
              value={row.since}
              onChange={(since) => onChange({ since })}
              unknown={isBlank(row) ? intake.sinceHint : intake.sinceUnknown}
              hint={intake.sinceHint}
            />
          </div>
          <div className="opening-buttons">
            <Button look="quiet" aria-expanded={more} aria-label={intake.moreOf(nth)} onClick={() => setMore(!more)}>
              {more ? intake.less : intake.more}
            </Button>
            <Button look="quiet" aria-label={intake.removeRow(nth)} onClick={() => work.remove(row.lotId)}>
              ×
            </Button>
          </div>
        </div>
        {more && <OpeningMore row={row} index={index} onChange={onChange} />}
      </div>
    </fieldset>
  );
});

function OpeningMore({
  row,
  index,
  onChange,
}: Pick<OpeningRowProps, 'row' | 'index'> & { onChange: (part: Partial<Row>) => void }) {
  const {
    stockIn: { intake, countKinds },
    sources,
  } = useMessages();
  const nth = index + 1;
  const field = <
    Key extends 'provenance' | 'seedZone' | 'note' | 'confinedSince' | 'sourceKind' | 'countKind' | 'rootChecked',
  >(
    key: Key,
  ) => ({
    name: `rows.${index}.${key}`,
    value: row[key],
    onChange: (value: Row[Key]) => onChange({ [key]: value }),
    optional: true as const,
  });
  const countKind = field('countKind');
  return (
    <div className="opening-more">
      <SelectField
        {...field('sourceKind')}
        label={intake.inRow(intake.sourceKind, nth)}
        empty={sources.kinds.unknown}
        choices={SOURCE_KINDS.filter((kind) => kind !== 'unknown').map((kind) => ({
          value: kind,
          label: sources.kinds[kind],
        }))}
      />
      <TextField {...field('provenance')} label={intake.inRow(intake.provenance, nth)} />
      <TextField {...field('seedZone')} label={intake.inRow(intake.seedZone, nth)} />
      <SelectField
        {...countKind}
        optional="unsaid"
        label={intake.inRow(intake.countKind, nth)}
        onChange={(kind) => countKind.onChange(kind || 'counted')}
        choices={COUNT_KINDS.map((kind) => ({ value: kind, label: countKinds[kind] }))}
      />
      <DayCell
        {...field('confinedSince')}
        label={intake.inRow(intake.confinedSince, nth)}
        unknown={intake.confinedSinceHint}
        hint={intake.sinceHint}
      />
      <TextField {...field('note')} label={intake.inRow(intake.note, nth)} />
      <CheckboxField {...field('rootChecked')} label={intake.inRow(intake.rootChecked, nth)} />
    </div>
  );
}
