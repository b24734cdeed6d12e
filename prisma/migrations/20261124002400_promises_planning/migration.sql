-- Of one lot a line may hold some units pinned and some floating, so that a pin never grows by itself.
ALTER TABLE reservation DROP CONSTRAINT reservation_pkey;
ALTER TABLE reservation ADD PRIMARY KEY (nursery_id, line_id, supply_id, pinned);

-- Lots and batches that a person released from a line: they do not come back by themselves, only when they are pinned again.
CREATE TABLE line_refusal (
  nursery_id uuid NOT NULL,
  line_id uuid NOT NULL,
  supply_id uuid NOT NULL,
  refused_on date NOT NULL,
  taken_back_on date,
  PRIMARY KEY (nursery_id, line_id, supply_id),
  FOREIGN KEY (nursery_id, line_id) REFERENCES order_line (nursery_id, id)
);
SELECT keep_within_nursery('line_refusal'::regclass, 'SELECT, INSERT, UPDATE');
CREATE TRIGGER line_refusal_is_kept BEFORE DELETE OR TRUNCATE ON line_refusal FOR EACH STATEMENT EXECUTE FUNCTION refuse_delete();

-- How far each line has come, from the ledger: what stands staged for it, and what was planted or handed over, less what was reversed.
CREATE VIEW line_progress WITH (security_invoker = true) AS
SELECT l.nursery_id, l.id AS line_id,
       (SELECT coalesce(sum(a.units), 0)::int FROM account a WHERE a.nursery_id = l.nursery_id AND a.line_id = l.id) AS staged_units,
       (SELECT coalesce(sum(m.from_units), 0)::int FROM account a JOIN movement m ON m.nursery_id = a.nursery_id AND m.from_account_id = a.id
         WHERE a.nursery_id = l.nursery_id AND a.line_id = l.id
           AND m.to_account_id IN (account_key('outside', 'outside', 'planted'), account_key('outside', 'outside', 'sold')))
     - (SELECT coalesce(sum(m.to_units), 0)::int FROM account a JOIN movement m ON m.nursery_id = a.nursery_id AND m.to_account_id = a.id
         WHERE a.nursery_id = l.nursery_id AND a.line_id = l.id
           AND m.from_account_id IN (account_key('outside', 'outside', 'planted'), account_key('outside', 'outside', 'sold'))) AS delivered_units,
       (SELECT coalesce(sum(r.units), 0)::int FROM reservation r WHERE r.nursery_id = l.nursery_id AND r.line_id = l.id) AS reserved_units
  FROM order_line l;
GRANT SELECT ON line_progress TO rootclock_app;
