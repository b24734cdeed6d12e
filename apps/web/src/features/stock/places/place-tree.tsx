/** PlaceTree: places below those in which they lie, each a row that leads to its page. */
import { useFormat } from '../../../lib/format/index.ts';
import { paths } from '../../../lib/paths.ts';
import { useMessages } from '../../../messages/index.ts';
import { RowLink } from '../../../ui/action/index.ts';
import { Badge } from '../../../ui/feedback/index.ts';
import './place-tree.css';

/** What a row of the tree shows; the server's rows have more. */
export interface TreeRow {
  placeId: string;
  code: string;
  name: string;
  kind: keyof ReturnType<typeof useMessages>['stockIn']['placeKinds'];
  depth: number;
  lots: number;
  units: number;
  unitsWithin: number;
  batches: number;
  winterCover: boolean;
  retired: boolean;
  closedUntilAt: string | null;
  closedBy: { code: string } | null;
}

export function PlaceTree({ rows, label }: { rows: readonly TreeRow[]; label: string }) {
  const { places, placeKinds, ...say } = useMessages().stockIn;
  const { dates } = useFormat();
  const top = Math.min(...rows.map((row) => row.depth));
  const standing = (row: TreeRow) =>
    [
      row.lots > 0 && `${say.lots(row.lots)}, ${say.units(row.units)}`,
      row.batches > 0 && say.batches(row.batches),
      row.unitsWithin > row.units && places.within(row.unitsWithin),
    ]
      .filter(Boolean)
      .join(' · ');
  return (
    <ul className="place-tree" aria-label={label}>
      {rows.map((row) => (
        <li
          key={row.placeId}
          className="place-row"
          style={{ marginInlineStart: `${Math.min(row.depth - top, 4) * 1.25}rem` }}
        >
          <div className="place-words">
            <RowLink to={paths.place(row.placeId)}>{row.code}</RowLink>
            <span className="place-kind">
              {row.name === row.code ? placeKinds[row.kind] : `${row.name}, ${placeKinds[row.kind]}`}
              {row.winterCover && `, ${places.sheltered}`}
            </span>
          </div>
          <span className="place-standing">{standing(row) || places.empty}</span>
          {row.closedBy && row.closedUntilAt && (
            <Badge shape="over">
              {row.closedBy.code === row.code
                ? places.closedUntil(dates.instant(row.closedUntilAt))
                : places.closedWith(row.closedBy.code)}
            </Badge>
          )}
          {row.retired && <Badge shape="open">{places.retired}</Badge>}
        </li>
      ))}
    </ul>
  );
}
