-- What the entries of a batch tell of how it went, kept beside it, so that plans need not read the whole ledger for it. Only what follows from entries
-- stands here; what is set (unit, seeds sown, protocol, closing) is read where it stands.
CREATE TABLE batch_evidence (
  nursery_id uuid NOT NULL,
  batch_id uuid NOT NULL,
  -- Its start stands, and nothing of it was drawn into other batches, which would speak in its place.
  speaks boolean NOT NULL,
  -- Cells, pieces, trays or packs that came in, as corrected since.
  begun_units int NOT NULL,
  -- The most that any count and the pottings before it showed alive; null where nobody counted.
  counted_units int,
  -- The first count at which anything was up.
  first_up_on date,
  -- What counts came short of.
  missing_units int NOT NULL,
  -- Lost since the first were up, otherwise than by failing to come up.
  lost_units int NOT NULL,
  was_discarded boolean NOT NULL,
  -- Cells or pieces that were potted, the plants that this gave, and how many of the cells were alive for it.
  potted_units int NOT NULL,
  potted_plants int NOT NULL,
  potted_alive int NOT NULL,
  PRIMARY KEY (nursery_id, batch_id),
  FOREIGN KEY (nursery_id, batch_id) REFERENCES batch (nursery_id, id)
);
SELECT keep_within_nursery('batch_evidence'::regclass, 'SELECT, INSERT, UPDATE');
CREATE TRIGGER batch_evidence_is_kept BEFORE DELETE OR TRUNCATE ON batch_evidence FOR EACH STATEMENT EXECUTE FUNCTION refuse_delete();

-- The same from the entries that stand: the one place that says how it is counted.
CREATE FUNCTION derive_batch_evidence(nursery_key uuid, batch_keys uuid[]) RETURNS TABLE (
  nursery_id uuid, batch_id uuid, speaks boolean, begun_units int, counted_units int, first_up_on date, missing_units int, lost_units int,
  was_discarded boolean, potted_units int, potted_plants int, potted_alive int) LANGUAGE sql STABLE AS $$
  WITH own AS MATERIALIZED (
    SELECT b.id, b.unit IN ('tray', 'pack') AS of_seeds,
           NOT EXISTS (SELECT 1 FROM entry r WHERE r.nursery_id = nursery_key AND r.reverses_id = b.created_entry_id) AS stands
      FROM batch b WHERE b.nursery_id = nursery_key AND b.id = ANY (batch_keys)),
  held AS MATERIALIZED (SELECT a.id, a.batch_id FROM own o JOIN account a ON a.nursery_id = nursery_key AND a.batch_id = o.id),
  moved AS (
    SELECT h.batch_id, m.entry_id, -m.from_units AS units, m.to_units AS plants, t.lot_id, t.batch_id AS other_id, t.outside, false AS entering
      FROM held h JOIN movement m ON m.nursery_id = nursery_key AND m.from_account_id = h.id
      JOIN account t ON t.nursery_id = nursery_key AND t.id = m.to_account_id
     WHERE t.batch_id IS DISTINCT FROM h.batch_id
    UNION ALL
    SELECT h.batch_id, m.entry_id, m.to_units, 0, f.lot_id, f.batch_id, f.outside, true
      FROM held h JOIN movement m ON m.nursery_id = nursery_key AND m.to_account_id = h.id
      JOIN account f ON f.nursery_id = nursery_key AND f.id = m.from_account_id
     WHERE f.batch_id IS DISTINCT FROM h.batch_id),
  told AS MATERIALIZED (
    SELECT m.*, e.kind, e.cause, e.happened_on, e.version, e.details ? 'correctedUnits' AS corrects
      FROM moved m JOIN entry e ON e.nursery_id = nursery_key AND e.id = m.entry_id
     WHERE e.kind <> 'reverse' AND NOT EXISTS (SELECT 1 FROM entry r WHERE r.nursery_id = nursery_key AND r.reverses_id = e.id)),
  potted AS MATERIALIZED (
    SELECT t.batch_id, t.happened_on, t.version, sum(-t.units) AS units, sum(t.plants) AS plants,
           CASE WHEN o.of_seeds THEN sum(t.plants) ELSE least(sum(-t.units), sum(t.plants)) END AS alive
      FROM told t JOIN own o ON o.id = t.batch_id WHERE t.lot_id IS NOT NULL AND t.kind = 'pot'
     GROUP BY t.batch_id, t.happened_on, t.version, o.of_seeds),
  pottings AS (SELECT p.batch_id, sum(p.units) AS units, sum(p.plants) AS plants, sum(p.alive) AS alive FROM potted p GROUP BY p.batch_id),
  shown AS (
    SELECT c.batch_id, c.counted_on, c.emerged_units, c.unexplained_units,
           c.emerged_units + coalesce(sum(p.alive) FILTER (WHERE (p.happened_on, p.version) < (c.counted_on, e.version)), 0) AS alive
      FROM own o JOIN batch_count c ON c.nursery_id = nursery_key AND c.batch_id = o.id
      JOIN entry e ON e.nursery_id = nursery_key AND e.id = c.entry_id
      LEFT JOIN potted p ON p.batch_id = c.batch_id
     WHERE NOT EXISTS (SELECT 1 FROM entry r WHERE r.nursery_id = nursery_key AND r.reverses_id = c.entry_id)
     GROUP BY c.batch_id, c.id, c.counted_on, c.emerged_units, c.unexplained_units),
  counts AS (
    SELECT s.batch_id, max(s.alive) AS alive, min(s.counted_on) FILTER (WHERE s.emerged_units > 0) AS first_on, sum(s.unexplained_units) AS missing
      FROM shown s GROUP BY s.batch_id),
  sums AS (
    SELECT t.batch_id,
           sum(t.units) FILTER (WHERE t.entering OR (t.corrects AND t.outside = 'unexplained')) AS begun,
           bool_or(t.other_id IS NOT NULL AND NOT t.entering) AS drawn,
           sum(-t.units) FILTER (WHERE t.outside = 'lost' AND t.cause IS DISTINCT FROM 'failed' AND t.happened_on >= n.first_on) AS lost,
           bool_or(t.outside = 'lost' AND t.cause = 'discarded') AS discarded
      FROM told t LEFT JOIN counts n ON n.batch_id = t.batch_id GROUP BY t.batch_id)
  SELECT nursery_key, o.id, o.stands AND s.batch_id IS NOT NULL AND NOT coalesce(s.drawn, false), coalesce(s.begun, 0)::int, n.alive::int, n.first_on,
         coalesce(n.missing, 0)::int, coalesce(s.lost, 0)::int, coalesce(s.discarded, false),
         coalesce(p.units, 0)::int, coalesce(p.plants, 0)::int, coalesce(p.alive, 0)::int
    FROM own o LEFT JOIN sums s ON s.batch_id = o.id LEFT JOIN counts n ON n.batch_id = o.id LEFT JOIN pottings p ON p.batch_id = o.id
$$;

-- Writes down what these batches tell now; what tells the same as before is not touched.
CREATE FUNCTION keep_batch_evidence(nursery_key uuid, batch_keys uuid[]) RETURNS int LANGUAGE sql AS $$
  WITH kept AS (
    INSERT INTO batch_evidence AS k SELECT d.* FROM derive_batch_evidence(nursery_key, batch_keys) d
    ON CONFLICT (nursery_id, batch_id) DO UPDATE SET
      speaks = excluded.speaks, begun_units = excluded.begun_units, counted_units = excluded.counted_units, first_up_on = excluded.first_up_on,
      missing_units = excluded.missing_units, lost_units = excluded.lost_units, was_discarded = excluded.was_discarded,
      potted_units = excluded.potted_units, potted_plants = excluded.potted_plants, potted_alive = excluded.potted_alive
    WHERE k IS DISTINCT FROM excluded
    RETURNING 1)
  SELECT count(*)::int FROM kept
$$;

-- What was entered until now is filled in here, so that no start has to.
SELECT keep_batch_evidence(n.id, ARRAY(SELECT b.id FROM batch b WHERE b.nursery_id = n.id)) FROM nursery n;
