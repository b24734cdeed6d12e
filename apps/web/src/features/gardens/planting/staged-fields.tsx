/** One number for each row of pulled plants, with a button for all and one for none. */
import { useMessages } from '../../../messages/index.ts';
import { Button } from '../../../ui/action/index.ts';
import { NumberField } from '../../../ui/fields/index.ts';
import { Taxon } from '../../plants/taxon.tsx';
import { meantRows, unitsOf, type StagedRow, type TypedUnits } from './staged-rows.ts';

export interface StagedFieldsProps {
  rows: readonly StagedRow[];
  typed: TypedUnits;
  onChange: (typed: TypedUnits) => void;
  /** What the number means: planted, handed over. */
  label: string;
}

export function StagedFields({ rows, typed, onChange, label }: StagedFieldsProps) {
  const { gardens } = useMessages();
  const words = gardens.planting;
  const meant = meantRows(rows, typed, 'all');
  return (
    <div className="staged-rows">
      {rows.map((row) => {
        const at = meant.findIndex(({ row: { key } }) => key === row.key);
        return (
          <div key={row.key} className="staged-row">
            <StagedWords row={row} />
            {/* Rows left out of what is sent have no place in it. */}
            <NumberField
              name={at < 0 ? `none.${row.key}` : `rows.${at}.units`}
              label={`${label}: ${row.lotCode}`}
              unit={words.ofPulled(row.units)}
              steps
              value={unitsOf(row, typed, 'all')}
              onChange={(units) => onChange({ ...typed, [row.key]: units })}
            />
          </div>
        );
      })}
      {rows.length > 1 && (
        <div className="row">
          <Button onClick={() => onChange({})}>{words.all}</Button>
          <Button onClick={() => onChange(Object.fromEntries(rows.map(({ key }) => [key, 0])))}>{words.none}</Button>
        </div>
      )}
    </div>
  );
}

export function StagedWords({ row }: { row: StagedRow }) {
  const { gardens } = useMessages();
  return (
    <p className="staged-what">
      <Taxon name={row.scientificName} />, {row.containerCode}
      {row.bedName && `, ${gardens.planting.forBed(row.bedName)}`}
    </p>
  );
}
