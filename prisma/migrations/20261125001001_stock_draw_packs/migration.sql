-- Seed in packs may be drawn in portions: a batch may begin with units of the batch of packs it comes from.

CREATE OR REPLACE FUNCTION apply_movements() RETURNS trigger LANGUAGE plpgsql SECURITY DEFINER SET search_path = public, pg_temp AS $$
DECLARE broken text;
BEGIN
  SELECT CASE
      WHEN f.kind = 'outside' AND f.outside NOT IN ('opening', 'bought', 'started', 'found') THEN 'units_enter_lawfully'
      WHEN t.kind = 'outside' AND t.outside NOT IN ('planted', 'sold', 'given', 'lost', 'unexplained') THEN 'units_leave_lawfully'
      WHEN f.kind = 'outside' AND t.kind = 'outside' THEN 'units_enter_lawfully'
      WHEN m.from_units <> m.to_units AND e.kind NOT IN ('pot', 'convert') THEN 'units_equal_on_both_sides'
      ELSE 'lot_receives_lawfully' END INTO broken
    FROM added m
    JOIN entry e ON e.nursery_id = m.nursery_id AND e.id = m.entry_id
    JOIN account f ON f.nursery_id = m.nursery_id AND f.id = m.from_account_id
    JOIN account t ON t.nursery_id = m.nursery_id AND t.id = m.to_account_id
    LEFT JOIN lot l ON l.nursery_id = t.nursery_id AND l.id = t.lot_id
    LEFT JOIN batch b ON b.nursery_id = t.nursery_id AND b.id = t.batch_id
   WHERE e.kind <> 'reverse' AND (
         (f.kind = 'outside' AND f.outside NOT IN ('opening', 'bought', 'started', 'found'))
      OR (t.kind = 'outside' AND t.outside NOT IN ('planted', 'sold', 'given', 'lost', 'unexplained'))
      OR (f.kind = 'outside' AND t.kind = 'outside')
      OR (m.from_units <> m.to_units AND e.kind NOT IN ('pot', 'convert'))
      OR (f.kind <> 'outside' AND t.kind <> 'outside'
          AND (f.lot_id IS DISTINCT FROM t.lot_id OR f.batch_id IS DISTINCT FROM t.batch_id)
          -- A lot takes from elsewhere only in the entry that made it; a batch may be potted into its lot for some days.
          AND NOT (t.lot_id IS NOT NULL AND (
                (e.kind IN ('pot', 'pot-up', 'convert', 'split', 'merge') AND l.created_entry_id = m.entry_id)
             OR (e.kind = 'pot' AND f.batch_id IS NOT NULL)))
          -- A batch takes from the packs its seed is drawn from only in the entry that started it.
          AND NOT (e.kind = 'convert' AND f.batch_id IS NOT NULL AND b.created_entry_id = m.entry_id AND b.parent_batch_id = f.batch_id)))
   LIMIT 1;
  IF broken IS NULL THEN
    -- Law 1: a reversal mirrors the whole entry, neither more nor less.
    SELECT 'reversal_mirrors_entry' INTO broken
      FROM (SELECT DISTINCT m.nursery_id, m.entry_id, e.reverses_id FROM added m
              JOIN entry e ON e.nursery_id = m.nursery_id AND e.id = m.entry_id WHERE e.kind = 'reverse') r
     WHERE EXISTS (
       (SELECT to_account_id, from_account_id, to_units, from_units FROM movement o WHERE o.nursery_id = r.nursery_id AND o.entry_id = r.reverses_id
        EXCEPT ALL
        SELECT from_account_id, to_account_id, from_units, to_units FROM movement o WHERE o.nursery_id = r.nursery_id AND o.entry_id = r.entry_id)
       UNION ALL
       (SELECT from_account_id, to_account_id, from_units, to_units FROM movement o WHERE o.nursery_id = r.nursery_id AND o.entry_id = r.entry_id
        EXCEPT ALL
        SELECT to_account_id, from_account_id, to_units, from_units FROM movement o WHERE o.nursery_id = r.nursery_id AND o.entry_id = r.reverses_id))
     LIMIT 1;
  END IF;
  IF broken IS NOT NULL THEN
    RAISE EXCEPTION 'a movement breaks the ledger law %', broken USING ERRCODE = 'check_violation', CONSTRAINT = broken;
  END IF;

  UPDATE account a SET units = a.units + d.units
    FROM (SELECT nursery_id, account_id, sum(units)::int AS units FROM (
            SELECT nursery_id, from_account_id AS account_id, -from_units AS units FROM added
            UNION ALL SELECT nursery_id, to_account_id, to_units FROM added) s
          GROUP BY nursery_id, account_id) d
   WHERE a.nursery_id = d.nursery_id AND a.id = d.account_id AND a.kind <> 'outside' AND d.units <> 0;

  INSERT INTO lineage (nursery_id, child_lot_id, parent_id, parent_kind)
  SELECT DISTINCT m.nursery_id, t.lot_id, coalesce(f.lot_id, f.batch_id), CASE WHEN f.lot_id IS NULL THEN 'batch' ELSE 'lot' END
    FROM added m
    JOIN entry e ON e.nursery_id = m.nursery_id AND e.id = m.entry_id
    JOIN account f ON f.nursery_id = m.nursery_id AND f.id = m.from_account_id
    JOIN account t ON t.nursery_id = m.nursery_id AND t.id = m.to_account_id
   WHERE e.kind <> 'reverse' AND t.lot_id IS NOT NULL AND f.kind <> 'outside' AND f.lot_id IS DISTINCT FROM t.lot_id
  ON CONFLICT DO NOTHING;
  RETURN NULL;
END $$;
