-- Which treatments lots and batches were under, on themselves or on what their plants came from: the one place where treatments travel down lineage.
-- A treatment of an ancestor counts up to the last day on which plants came from it, that day included, since nobody can say which came first; what was
-- taken back does not count, neither a treatment nor a potting. Packs that a batch was drawn from are its ancestors, and so is what plants went into
-- and came back from when an entry was taken back: they were the same plants under another label.
-- OFFSET 0 makes each step ask for its own few rows: the planner would else reckon all lineage of a long history first, longer than a command may take.
CREATE FUNCTION treatments_of(nursery_key uuid, subject_keys uuid[])
  RETURNS TABLE (subject_id uuid, entry_id uuid, happened_on date, on_kind text, on_id uuid) LANGUAGE sql STABLE
BEGIN ATOMIC
  WITH RECURSIVE line_of (subject_id, id, until_on) AS (
    SELECT s.id, s.id, 'infinity'::date FROM unnest(subject_keys) AS s (id)
    UNION
    SELECT d.subject_id, came.id, least(d.until_on, came.last_on)
      FROM line_of d
      CROSS JOIN LATERAL (
        SELECT g.parent_id AS id, (
          SELECT max(e.happened_on)
            FROM account t
            JOIN movement m ON m.nursery_id = t.nursery_id AND m.to_account_id = t.id
            JOIN account f ON f.nursery_id = m.nursery_id AND f.id = m.from_account_id AND g.parent_id IN (f.lot_id, f.batch_id)
            JOIN entry e ON e.nursery_id = m.nursery_id AND e.id = m.entry_id AND e.kind <> 'reverse'
           WHERE t.nursery_id = nursery_key AND t.lot_id = g.child_lot_id
             AND NOT EXISTS (SELECT 1 FROM entry r WHERE r.nursery_id = e.nursery_id AND r.reverses_id = e.id)) AS last_on
          FROM lineage g WHERE g.nursery_id = nursery_key AND g.child_lot_id = d.id
        UNION ALL
        SELECT b.parent_batch_id, b.started_on FROM batch b WHERE b.nursery_id = nursery_key AND b.id = d.id AND b.parent_batch_id IS NOT NULL
        UNION ALL
        SELECT coalesce(f.lot_id, f.batch_id), max(e.happened_on)
          FROM account t
          JOIN movement m ON m.nursery_id = t.nursery_id AND m.to_account_id = t.id
          JOIN account f ON f.nursery_id = m.nursery_id AND f.id = m.from_account_id AND coalesce(f.lot_id, f.batch_id) <> d.id
          JOIN entry e ON e.nursery_id = m.nursery_id AND e.id = m.entry_id AND e.kind = 'reverse'
         WHERE t.nursery_id = nursery_key AND (t.lot_id = d.id OR t.batch_id = d.id)
         GROUP BY 1
        OFFSET 0) came
     WHERE came.last_on IS NOT NULL)
  SELECT DISTINCT d.subject_id, e.id, e.happened_on, s.subject_kind, s.subject_id
    FROM line_of d
    JOIN entry_subject s ON s.nursery_id = nursery_key AND s.subject_id = d.id
    JOIN entry e ON e.nursery_id = s.nursery_id AND e.id = s.entry_id AND e.kind = 'treat' AND e.happened_on <= d.until_on
   WHERE NOT EXISTS (SELECT 1 FROM entry r WHERE r.nursery_id = e.nursery_id AND r.reverses_id = e.id);
END;
REVOKE ALL ON FUNCTION treatments_of(uuid, uuid[]) FROM PUBLIC;
GRANT EXECUTE ON FUNCTION treatments_of(uuid, uuid[]) TO rootclock_app;
