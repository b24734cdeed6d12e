import type { TestNursery } from '../../../support/nursery.ts';

/** The two views that judging reads, and what each of their columns is for. A new column makes the test fail until it stands here. */
export const VIEW_COLUMNS: Record<string, { decides: string[]; named: string[] }> = {
  judged_supply: {
    decides: [
      'plant_id', 'container_id', 'container_ml', 'cells', 'is_open', 'units', 'held', 'ready_on', 'plant_by_on', 'plant_by_state', 'limit_on', 'seed_zone', 'origin', 'is_cultivar',
      'native_regions', 'source_kind', 'pesticide_statement',
    ],
    named: ['nursery_id', 'id', 'kind', 'code', 'scientific_name', 'container_code', 'quarantined_units', 'root_checked', 'clock_on'],
  },
  judged_line: {
    decides: [
      'order_kind', 'region', 'lead_days', 'rank', 'due_on', 'cells', 'units', 'staged_units', 'delivered_units', 'seed_zone', 'wild_type', 'untreated', 'natives_only', 'accepts', 'refused_ids',
    ],
    named: ['nursery_id', 'id', 'order_id', 'order_code', 'client_name', 'site_name', 'plant_id', 'scientific_name', 'container_id', 'container_code'],
  },
};

const KEY = 'a key, which no command changes';
const NAME = 'only shown: it decides nothing';
const FIXED = 'set when the row is made, and by no command after';

/** Every stored column beneath the views and beneath what tells treatments: the edits that change it, or why no command can. */
export const COVERED: Record<string, string[] | string> = {
  'account.batch_id': KEY, 'account.id': KEY, 'account.line_id': KEY, 'account.lot_id': KEY, 'account.nursery_id': KEY, 'account.place_id': KEY,
  'account.units': ['plants moved into quarantine', 'the last plants lost', 'what stood out in the cold lost', 'plants pulled and planted'],
  'batch.cautious_units': ['a batch expected to give more'],
  'batch.closed_on': ['a batch closed'],
  'batch.code': NAME,
  'batch.confined_on': NAME, 'batch.container_on': NAME,
  'batch.id': KEY, 'batch.nursery_id': KEY, 'batch.parent_batch_id': FIXED,
  'batch.limit_on': ['a rule for the tray'], 'batch.plant_by_on': ['a rule for the tray'], 'batch.plant_by_state': ['a rule for the tray'], 'batch.rule_id': ['a rule for the tray'],
  'batch.plant_id': ['a source that is another plant'],
  'batch.ready_on': ['a batch ready later'],
  'batch.source_id': FIXED, 'batch.started_on': FIXED,
  'batch.target_container_id': ['a batch meant for another pot'],
  'client.id': KEY, 'client.nursery_id': KEY, 'client.name': NAME,
  'client.lead_days': ["a client's lead"],
  'container.cells': ['cells of a tray'],
  'container.code': NAME, 'container.id': KEY, 'container.nursery_id': KEY,
  'container.volume_ml': ['the size of a pot'],
  'entry.happened_on': ['a treatment of earlier plants, recorded late'],
  'entry.id': KEY, 'entry.kind': FIXED, 'entry.nursery_id': KEY,
  'entry.reverses_id': ['a treatment of earlier plants, recorded late'],
  'entry_subject.entry_id': KEY, 'entry_subject.nursery_id': KEY, 'entry_subject.subject_id': KEY, 'entry_subject.subject_kind': FIXED,
  'garden_order.client_id': FIXED, 'garden_order.code': NAME, 'garden_order.id': KEY, 'garden_order.kind': FIXED, 'garden_order.nursery_id': KEY, 'garden_order.site_id': FIXED,
  'garden_order.due_on': ['an order on another day'],
  'garden_order.natives_only': ['an order for natives'],
  'garden_order.state': ['an order cancelled'],
  'hold.lot_id': KEY, 'hold.nursery_id': KEY,
  'hold.released_on': ['a lot held and released'],
  'line_alternative.container_id': ['another stand-in'], 'line_alternative.plant_id': ['another stand-in'], 'line_alternative.penalty': ['another stand-in'],
  'line_alternative.line_id': KEY, 'line_alternative.nursery_id': KEY,
  'line_refusal.line_id': KEY, 'line_refusal.nursery_id': KEY, 'line_refusal.supply_id': KEY,
  'line_refusal.taken_back_on': ['plants released by hand and tied again'],
  'lineage.child_lot_id': KEY, 'lineage.nursery_id': KEY, 'lineage.parent_id': KEY,
  'lot.closed_on': ['the last plants lost'],
  'lot.code': NAME, 'lot.confined_on': NAME, 'lot.container_on': NAME,
  'lot.container_id': FIXED, 'lot.id': KEY, 'lot.nursery_id': KEY, 'lot.source_id': FIXED,
  'lot.limit_on': ['a rule for the pot'], 'lot.plant_by_on': ['a rule for the pot', 'what stood out in the cold lost'], 'lot.plant_by_state': ['a rule for the pot'], 'lot.rule_id': ['a rule for the pot'],
  'lot.plant_id': ['a source that is another plant'],
  'lot.ready_on': ['a root ball that fell apart'], 'lot.root_checked_on': ['a root ball that fell apart'],
  'movement.entry_id': KEY, 'movement.from_account_id': KEY, 'movement.nursery_id': KEY, 'movement.to_account_id': KEY,
  'movement.from_units': ['plants pulled and planted'], 'movement.to_units': ['plants pulled and planted'],
  'order_line.container_id': FIXED, 'order_line.id': KEY, 'order_line.nursery_id': KEY, 'order_line.order_id': KEY, 'order_line.plant_id': FIXED,
  'order_line.rank': ['an order on another day'],
  'order_line.seed_zone': ['conditions of a line'], 'order_line.untreated': ['conditions of a line'], 'order_line.wild_type': ['conditions of a line'],
  'order_line.units': ['a line for more'],
  'order_line.withdrawn_on': ['a line withdrawn'],
  'place.id': KEY, 'place.nursery_id': KEY,
  'place.kind': ['a place turned into quarantine and back'],
  'plant.cultivar_epithet': ['a plant that is a cultivar'],
  'plant.id': KEY, 'plant.nursery_id': KEY, 'plant.scientific_name': NAME,
  'plant.native_regions': ['where a plant is native'],
  'pot_life_rule.basis': 'names the clock that is shown; a rule of another basis is another rule',
  'pot_life_rule.id': KEY, 'pot_life_rule.nursery_id': KEY,
  'reservation.line_id': KEY, 'reservation.nursery_id': KEY,
  'reservation.units': ['plants released by hand and tied again'],
  'site.id': KEY, 'site.nursery_id': KEY, 'site.name': NAME,
  'site.region': ['where a plant is native'],
  'source.id': KEY, 'source.nursery_id': KEY,
  'source.kind': ['the kind of a source'],
  'source.origin': ['the origin of a source'],
  'source.pesticide_statement': ["a source's pesticide statement"],
  'source.seed_zone': ['the zone of a source'],
};

/** Columns of the views, and of the tables beneath them and beneath the function that tells treatments, as the database itself depends on them. */
export async function readJudgedColumns({ sql }: Pick<TestNursery, 'sql'>): Promise<{ views: Record<string, string[]>; stored: string[] }> {
  const views = await sql<{ name: string; columns: string[] }>(`
    SELECT c.relname AS name, array_agg(a.attname::text ORDER BY a.attname) AS columns FROM pg_class c JOIN pg_attribute a ON a.attrelid = c.oid AND a.attnum > 0
     WHERE c.oid IN ('judged_supply'::regclass, 'judged_line'::regclass) GROUP BY c.relname`);
  const stored = await sql<{ name: string }>(`
    WITH RECURSIVE uses (class_id, object_id) AS (
      SELECT 'pg_rewrite'::regclass::oid, r.oid FROM pg_rewrite r WHERE r.ev_class IN ('judged_supply'::regclass, 'judged_line'::regclass)
      UNION SELECT 'pg_proc'::regclass::oid, 'treatments_of'::regproc::oid
      UNION
      SELECT 'pg_rewrite'::regclass::oid, v.oid FROM uses u
        JOIN pg_depend d ON d.classid = u.class_id AND d.objid = u.object_id AND d.refclassid = 'pg_class'::regclass
        JOIN pg_rewrite v ON v.ev_class = d.refobjid)
    SELECT DISTINCT c.relname || '.' || a.attname AS name FROM uses u
      JOIN pg_depend d ON d.classid = u.class_id AND d.objid = u.object_id AND d.refclassid = 'pg_class'::regclass AND d.refobjsubid > 0
      JOIN pg_class c ON c.oid = d.refobjid AND c.relkind = 'r'
      JOIN pg_attribute a ON a.attrelid = c.oid AND a.attnum = d.refobjsubid
     ORDER BY 1`);
  return { views: Object.fromEntries(views.map(({ name, columns }) => [name, columns])), stored: stored.map(({ name }) => name) };
}
