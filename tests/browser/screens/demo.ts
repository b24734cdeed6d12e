import type { Role } from '@rootclock/domain';
import pg from 'pg';
import { loadDemo } from '../../../apps/server/src/demo/load.ts';
import type { TestDatabase } from '../../support/database.ts';
import type { SignedInNursery } from '../../support/session.ts';

/** A day in the middle of planting, on which much must leave its pot and much is to be pulled. */
const NOW = new Date('2026-05-20T17:00:00Z');

/** The demo nursery in a database of a test: three seasons, in which every screen has something to show. */
export async function openDemo(
  database: TestDatabase,
): Promise<{ nursery: SignedInNursery; close: () => Promise<void> }> {
  await loadDemo(database, NOW);
  const owner = new pg.Client({ connectionString: database.ownerUrl });
  await owner.connect();
  const sql = async <Row extends pg.QueryResultRow>(text: string, values: unknown[] = []): Promise<Row[]> =>
    (await owner.query<Row>(text, values)).rows;
  const members = await sql<{ nurseryId: SignedInNursery['nurseryId']; personId: string; role: Role }>(
    'SELECT nursery_id::text AS "nurseryId", person_id::text AS "personId", role FROM membership',
  );
  const [first] = members;
  if (!first) throw new Error('the demo has no people');
  const personOf = (role: Role) => ({ personId: members.find((member) => member.role === role)?.personId ?? '' });
  return {
    nursery: {
      nurseryId: first.nurseryId,
      sql,
      clock: { now: () => NOW },
      people: {
        owner: personOf('owner'),
        grower: personOf('grower'),
        crew: personOf('crew'),
        viewer: personOf('viewer'),
      },
    },
    close: () => owner.end(),
  };
}

/** The row that fills each parameter of an address, one with much to show. */
export const ROW_FOR: Record<string, string> = {
  $lotId: `SELECT lot_id AS id FROM reservation WHERE lot_id IS NOT NULL GROUP BY lot_id ORDER BY sum(units) DESC, lot_id LIMIT 1`,
  $batchId: `SELECT b.id FROM batch b JOIN batch_count c ON c.nursery_id = b.nursery_id AND c.batch_id = b.id WHERE b.closed_on IS NULL GROUP BY b.id ORDER BY count(*) DESC, b.id LIMIT 1`,
  $orderId: `SELECT o.id FROM garden_order o JOIN order_line l ON l.nursery_id = o.nursery_id AND l.order_id = o.id LEFT JOIN reservation r ON r.nursery_id = l.nursery_id AND r.line_id = l.id
    LEFT JOIN account a ON a.nursery_id = l.nursery_id AND a.line_id = l.id AND a.units > 0 WHERE o.state = 'open' GROUP BY o.id ORDER BY count(a.units) > 0 DESC, count(r.units) DESC, o.id LIMIT 1`,
  $clientId: `SELECT client_id AS id FROM garden_order GROUP BY client_id ORDER BY count(*) DESC, client_id LIMIT 1`,
  $siteId: `SELECT site_id AS id FROM garden_order WHERE site_id IS NOT NULL GROUP BY site_id ORDER BY count(*) DESC, site_id LIMIT 1`,
  $placeId: `SELECT place_id AS id FROM account WHERE units > 0 AND place_id IS NOT NULL GROUP BY place_id ORDER BY count(*) DESC, place_id LIMIT 1`,
  $sourceId: `SELECT source_id AS id FROM lot GROUP BY source_id ORDER BY count(*) DESC, source_id LIMIT 1`,
  $protocolId: `SELECT protocol_id AS id FROM protocol_version v LEFT JOIN batch b ON b.nursery_id = v.nursery_id AND b.protocol_version_id = v.id GROUP BY protocol_id ORDER BY count(b.id) DESC, protocol_id LIMIT 1`,
  $plantId: `SELECT plant_id AS id FROM lot GROUP BY plant_id ORDER BY count(*) DESC, plant_id LIMIT 1`,
};
