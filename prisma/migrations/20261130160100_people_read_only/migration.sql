-- Begins a read: sets whose nursery this transaction is, lets it write nothing, and answers the nursery's time zone. That it is of one moment has
-- to be said before the statement that calls this: a snapshot is already taken here, after which PostgreSQL refuses another isolation level.
CREATE OR REPLACE FUNCTION begin_read(nursery_key uuid) RETURNS text LANGUAGE plpgsql AS $$
BEGIN
  PERFORM set_config('app.nursery', nursery_key::text, true), set_config('transaction_read_only', 'on', true);
  RETURN (SELECT n.zone FROM nursery n WHERE n.id = nursery_key);
END $$;
