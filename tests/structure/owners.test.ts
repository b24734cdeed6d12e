// A feature owns its tables. Another one reads them by a read that the owner exports or by a view that is named here, and never
// writes them: so that an owner can change its tables without looking for readers.
import { featureOfTables } from '@rootclock/server/cli/schema/pull';
import { readMigrations } from '@rootclock/server/db/migrate';
import { describe, expect, test } from 'vitest';
import { allFiles, textOf } from './repository.ts';
import { templatesOf, touchedBy } from './statements.ts';

/** Views that other features may read, each with its reason. */
const named: Record<string, string> = {
  nursery_settings: 'each feature keeps its settings in the one row that the nursery has',
  command_taken: 'who did what, and in which order, is told of losses and of seed',
  plant_named: 'whatever is shown or reckoned with is a plant',
  plant_called: 'a plant is found by any of its names, wherever it is looked for',
  plant_told: 'habit and cautions are told of a plant wherever it is asked for',
  container_named: 'and stands in a container',
  source_named: 'what may be promised rests on where seed and plants are from',
  place_named: 'plants are looked for where they stand',
  lot_named: 'what is promised, pulled and traced is lots',
  batch_named: 'and what will become of batches',
  units_standing: 'how many stand is asked of every lot, batch, place and line',
  lot_held: 'a held lot is neither promised nor pulled',
  rule_named: 'a page that shows a clock tells which rule it is by',
  window_named: 'and what a window opens for',
  client_named: 'orders are told by who asked',
  site_named: 'and by where they go; what may be promised rests on its region',
  order_named: 'what is asked for is read wherever plants are',
  line_asked: 'line by line',
  line_progress: 'how far a line has come is asked wherever a line is shown or served',
  units_reserved: 'what is reserved is shown with lots, batches and lines',
  container_told: 'how large a container is decides how many fit on a bench',
  viability_told: 'a test of seed that is due is a task',
  entry_told: 'whoever tells what happened to plants tells it from the ledger',
  entry_about: 'and what each entry is about',
  movement_told: 'and what it moved',
  account_told: 'from where to where',
  lineage_told: 'what came of what is traced through every label',
  observation_told: 'what was seen is told with what was counted',
  lot_told: 'clocks are reckoned and shown lot by lot',
  batch_told: 'and propagation is about batches, which stand in the ledger as lots do',
  place_told: 'how much room a place has, and when it is due to be covered',
  stage_told: 'plans and tasks follow the stages of protocols',
  client_told: 'what is known of a client stands on one page with what was planted for them',
  site_told: 'what is known of a site likewise',
  bed_told: 'and of its beds',
  order_told: 'an order’s note is shown with what is short of it',
  line_told: 'of which kit a line is part, and at which edition it was read',
  alternative_told: 'what else a line takes decides what serves it',
  kit_told: 'a kit is told by its name',
  free_units: 'what may still be promised is shown with lots, which stand before promises',
};

const migrations = readMigrations();
const views = new Map(
  migrations.flatMap(({ name, sql }) =>
    [...sql.matchAll(/^CREATE (?:OR REPLACE )?VIEW (\w+)/gm)].map(
      ([, view = '']) => [view, name.split('_')[1] as string] as const,
    ),
  ),
);
const owners = new Map([...featureOfTables(migrations), ...views]);
const features = 'apps/server/src/features/';

/** Each table or view of another feature that a file reads or writes, once. */
const foreign = allFiles('.ts')
  .filter((file) => file.startsWith(features))
  .flatMap((path) => {
    const [feature = '', ...rest] = path.slice(features.length).split('/');
    const touched = templatesOf(textOf(path)).flatMap(touchedBy);
    const sentences = touched.flatMap(({ relation, writes }) => {
      const owner = owners.get(relation);
      if (owner === undefined || owner === feature || (!writes && relation in named)) return [];
      return [tell(feature, rest.join('/'), writes, owner, relation)];
    });
    return [...new Set(sentences)];
  });

function tell(feature: string, file: string, writes: boolean, owner: string, relation: string): string {
  return `feature ${feature}'s file ${file} ${writes ? 'writes' : 'reads'} ${owner}'s ${views.has(relation) ? 'view' : 'table'} ${relation}`;
}

test('the tables of a feature are touched by no other feature', () => {
  expect(foreign).toEqual([]);
});

test('a view is named for others only where it is made', () => {
  expect(Object.keys(named).filter((view) => !views.has(view))).toEqual([]);
});

describe('what a file touches', () => {
  const all = (source: string) =>
    templatesOf(source)
      .flatMap(touchedBy)
      .map(({ relation, writes }) => `${writes ? 'writes' : 'reads'} ${relation}`);

  test('is found in statements, in parts of them, and in values within them', () => {
    expect(all('tx.rows(row)`SELECT 1 FROM lot l, place p JOIN plant USING (id)`')).toEqual([
      'reads lot',
      'reads place',
      'reads plant',
    ]);
    expect(all("sql`x ${a ? sql`JOIN hold h ON h.id = ${`${'`'}`}` : empty} FROM account`")).toEqual([
      'reads hold',
      'reads account',
    ]);
    expect(all('tx.run`INSERT INTO lot (id) SELECT id FROM batch ON CONFLICT (id) DO UPDATE SET n = 1`')).toEqual([
      'writes lot',
      'reads batch',
    ]);
    expect(
      all('tx.run`WITH gone AS (DELETE FROM hold RETURNING id) UPDATE lot SET n = 1 FROM gone, source s`'),
    ).toEqual(['writes hold', 'writes lot', 'reads source']);
  });

  test('is neither a function, nor what a statement names itself, nor a word of a sentence or comment', () => {
    expect(
      all('tx.row(row)`SELECT max(a) FROM treatments_of(1, ARRAY[2]) t, lateral_of(x) WHERE a IS DISTINCT FROM lot`'),
    ).toEqual([]);
    expect(
      all(
        'tx.row(row)`WITH RECURSIVE lot (id) AS (SELECT 1), place AS MATERIALIZED (SELECT 2) SELECT FROM lot, place`',
      ),
    ).toEqual([]);
    expect(
      all('// FROM lot `\nconst said = `taken from lot ${code}, or from place`;\nconst it = "FROM lot `";'),
    ).toEqual([]);
    expect(all("sql`SELECT 'FROM lot' -- FROM place\n FOR UPDATE OF plant`")).toEqual([]);
  });
});
