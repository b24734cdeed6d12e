/** SpringRow: one lot at one place on the sheet of a spring count: three numbers, and how many are still to be told apart. */
import { useFormat } from '../../../../lib/format/index.ts';
import { useMessages } from '../../../../messages/index.ts';
import { Button } from '../../../../ui/action/index.ts';
import { NumberField } from '../../../../ui/fields/index.ts';
import { EMPTY_LINE, isCounted, type SpringLine, sumOf, withRestUp } from './spring-lines.ts';

export interface SpringRowData {
  lotId: string;
  code: string;
  scientificName: string;
  containerName: string;
  placeId: string;
  placeCode: string;
  standing: number;
  last: { countedOn: string; upUnits: number; deadUnits: number; notUpUnits: number } | null;
}

export interface SpringRowProps {
  row: SpringRowData;
  /** Its place among the lines that are sent, by which errors find it. */
  at: number | null;
  line: SpringLine | undefined;
  onChange: (line: SpringLine) => void;
}

export function SpringRow({ row, at, line = EMPTY_LINE, onChange }: SpringRowProps) {
  const { winter: say } = useMessages();
  const { dates } = useFormat();
  const left = row.standing - sumOf(line);
  const field = (key: keyof SpringLine, units: string) => ({
    name: at === null ? `${row.lotId}.${row.placeId}.${key}` : `counts.${at}.${units}`,
    optional: 'unsaid' as const,
    value: line[key],
    onChange: (value: number | null) => onChange({ ...line, [key]: value }),
  });
  return (
    <li className="spring-row">
      <p className="spring-head">
        <strong>{row.code}</strong> <i lang="la">{row.scientificName}</i>
        <span className="spring-place">{row.placeCode}</span>
      </p>
      <p className="spring-stands">{say.stands(row.standing, row.containerName)}</p>
      {row.last && (
        <p className="spring-stands">
          {say.last(dates.short(row.last.countedOn), row.last.upUnits, row.last.deadUnits, row.last.notUpUnits)}
        </p>
      )}
      <div className="spring-fields" role="group" aria-label={say.field(say.count, row.code, row.placeCode)}>
        <NumberField label={say.up} {...field('up', 'upUnits')} />
        <NumberField label={say.dead} {...field('dead', 'deadUnits')} />
        <NumberField label={say.notUp} {...field('notUp', 'notUpUnits')} />
      </div>
      <div className="spring-foot">
        <Button
          aria-label={say.field(say.restUp, row.code, row.placeCode)}
          onClick={() => onChange(withRestUp(line, row.standing))}
        >
          {say.restUp}
        </Button>
        {isCounted(line) && (
          <span className={left === 0 ? 'spring-sums' : 'spring-left'}>
            {left === 0 ? `✓ ${say.sums}` : say.left(left)}
          </span>
        )}
      </div>
    </li>
  );
}
