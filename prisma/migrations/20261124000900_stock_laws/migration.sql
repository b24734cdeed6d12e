-- The laws of the ledger, held by the database itself.

-- Law 1: the ledger is append-only.
CREATE FUNCTION refuse_ledger_change() RETURNS trigger LANGUAGE plpgsql AS $$
BEGIN
  RAISE EXCEPTION 'the ledger is append-only: % of % is refused', TG_OP, TG_TABLE_NAME
    USING ERRCODE = 'restrict_violation', CONSTRAINT = 'ledger_append_only';
END $$;
CREATE TRIGGER movement_append_only BEFORE UPDATE OR DELETE OR TRUNCATE ON movement FOR EACH STATEMENT EXECUTE FUNCTION refuse_ledger_change();
CREATE TRIGGER entry_append_only BEFORE UPDATE OR DELETE OR TRUNCATE ON entry FOR EACH STATEMENT EXECUTE FUNCTION refuse_ledger_change();
CREATE TRIGGER command_append_only BEFORE UPDATE OR DELETE OR TRUNCATE ON command FOR EACH STATEMENT EXECUTE FUNCTION refuse_ledger_change();

-- The same three parts always give the same account, so that a writer needs no look-up before it posts.
CREATE FUNCTION account_key(kind text, holder text, standing text) RETURNS uuid LANGUAGE sql IMMUTABLE PARALLEL SAFE
  AS $$ SELECT md5(kind || '/' || holder || '/' || standing)::uuid $$;

-- Laws 2, 3 and 5 in the statement that adds movements: what may move where, the balances, and who came from whom.
CREATE FUNCTION apply_movements() RETURNS trigger LANGUAGE plpgsql SECURITY DEFINER SET search_path = public, pg_temp AS $$
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
             OR (e.kind = 'pot' AND f.batch_id IS NOT NULL)))))
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
CREATE TRIGGER movement_apply AFTER INSERT ON movement REFERENCING NEW TABLE AS added FOR EACH STATEMENT EXECUTE FUNCTION apply_movements();

-- Law 1: a reversal cannot itself be reversed.
CREATE FUNCTION refuse_reversal_of_reversal() RETURNS trigger LANGUAGE plpgsql SECURITY DEFINER SET search_path = public, pg_temp AS $$
BEGIN
  IF EXISTS (SELECT 1 FROM entry WHERE nursery_id = NEW.nursery_id AND id = NEW.reverses_id AND kind = 'reverse') THEN
    RAISE EXCEPTION 'a reversal cannot be reversed' USING ERRCODE = 'check_violation', CONSTRAINT = 'reversal_is_final';
  END IF;
  RETURN NULL;
END $$;
CREATE TRIGGER entry_reversal_is_final AFTER INSERT ON entry FOR EACH ROW WHEN (NEW.kind = 'reverse') EXECUTE FUNCTION refuse_reversal_of_reversal();

-- Law 4 at commit: a lot's reservations fit what stands at places, a batch's fit its cautious yield.
CREATE FUNCTION require_lot_covers_reservations() RETURNS trigger LANGUAGE plpgsql SECURITY DEFINER SET search_path = public, pg_temp AS $$
DECLARE reserved bigint; on_hand bigint;
BEGIN
  SELECT coalesce(sum(units), 0) INTO reserved FROM reservation WHERE nursery_id = NEW.nursery_id AND lot_id = NEW.lot_id;
  IF reserved > 0 THEN
    SELECT coalesce(sum(units), 0) INTO on_hand FROM account WHERE nursery_id = NEW.nursery_id AND lot_id = NEW.lot_id AND kind = 'place' AND units > 0;
    IF reserved > on_hand THEN
      RAISE EXCEPTION 'reserved % exceeds on hand % of lot %', reserved, on_hand, NEW.lot_id
        USING ERRCODE = 'check_violation', CONSTRAINT = 'reserved_within_on_hand';
    END IF;
  END IF;
  RETURN NULL;
END $$;
CREATE CONSTRAINT TRIGGER account_covers_reservations AFTER UPDATE OF units ON account DEFERRABLE INITIALLY DEFERRED
  FOR EACH ROW WHEN (NEW.lot_id IS NOT NULL AND NEW.kind = 'place' AND NEW.units < OLD.units) EXECUTE FUNCTION require_lot_covers_reservations();
CREATE CONSTRAINT TRIGGER reservation_is_covered_by_lot AFTER INSERT OR UPDATE ON reservation DEFERRABLE INITIALLY DEFERRED
  FOR EACH ROW WHEN (NEW.lot_id IS NOT NULL) EXECUTE FUNCTION require_lot_covers_reservations();

CREATE FUNCTION require_batch_covers_reservations() RETURNS trigger LANGUAGE plpgsql SECURITY DEFINER SET search_path = public, pg_temp AS $$
DECLARE reserved bigint; cautious bigint; batch_key uuid;
BEGIN
  batch_key := CASE TG_TABLE_NAME WHEN 'batch' THEN (to_jsonb(NEW) ->> 'id')::uuid ELSE (to_jsonb(NEW) ->> 'batch_id')::uuid END;
  SELECT coalesce(sum(units), 0) INTO reserved FROM reservation WHERE nursery_id = NEW.nursery_id AND batch_id = batch_key;
  SELECT CASE WHEN closed_on IS NULL THEN cautious_units ELSE 0 END INTO cautious FROM batch WHERE nursery_id = NEW.nursery_id AND id = batch_key;
  IF reserved > cautious THEN
    RAISE EXCEPTION 'reserved % exceeds the cautious yield % of batch %', reserved, cautious, batch_key
      USING ERRCODE = 'check_violation', CONSTRAINT = 'reserved_within_cautious_yield';
  END IF;
  RETURN NULL;
END $$;
CREATE CONSTRAINT TRIGGER batch_covers_reservations AFTER UPDATE OF cautious_units, closed_on ON batch DEFERRABLE INITIALLY DEFERRED
  FOR EACH ROW EXECUTE FUNCTION require_batch_covers_reservations();
CREATE CONSTRAINT TRIGGER reservation_is_covered_by_batch AFTER INSERT OR UPDATE ON reservation DEFERRABLE INITIALLY DEFERRED
  FOR EACH ROW WHEN (NEW.batch_id IS NOT NULL) EXECUTE FUNCTION require_batch_covers_reservations();

-- Law 9: nothing is hard-deleted. Rows of these tables are retired, released, withdrawn or blanked instead.
CREATE FUNCTION refuse_delete() RETURNS trigger LANGUAGE plpgsql AS $$
BEGIN
  RAISE EXCEPTION '% of % is refused: rows are retired, never deleted', TG_OP, TG_TABLE_NAME
    USING ERRCODE = 'restrict_violation', CONSTRAINT = 'nothing_is_hard_deleted';
END $$;
DO $$
DECLARE kept text;
BEGIN
  FOREACH kept IN ARRAY ARRAY['nursery', 'plant', 'container', 'place', 'source', 'pot_life_rule', 'planting_window', 'lot', 'batch', 'batch_count',
    'intake', 'account', 'lineage', 'hold', 'treatment', 'observation', 'client', 'site', 'bed', 'garden_order', 'order_line'] LOOP
    EXECUTE format('CREATE TRIGGER %I BEFORE DELETE OR TRUNCATE ON %I FOR EACH STATEMENT EXECUTE FUNCTION refuse_delete()', kept || '_is_kept', kept);
  END LOOP;
END $$;
