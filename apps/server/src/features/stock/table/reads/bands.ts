import { bandDays, type PotBand } from '@rootclock/domain';
import { join, sql, type Sql } from '../../../../db/sql.ts';

/** Whether the plant-by day in a column lies in a band: the one place where a band of the domain is put into SQL. */
export function inBand(column: Sql, band: PotBand, today: string, noticeDays: number): Sql {
  if (band === 'unlimited') return sql`${column} IS NULL`;
  const { from, until } = bandDays(band, today, noticeDays);
  const ends = [
    ...(from === null ? [] : [sql`${column} >= ${from}::date`]),
    ...(until === null ? [] : [sql`${column} <= ${until}::date`]),
  ];
  return join(ends, ' AND ');
}
