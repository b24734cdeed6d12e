-- Which migrations the database has, so that the server can say whether it is ready; the history itself is the owner's.
CREATE FUNCTION applied_migrations() RETURNS TABLE (name text) LANGUAGE plpgsql STABLE SECURITY DEFINER SET search_path = public, pg_temp AS $$
BEGIN
  RETURN QUERY SELECT m.migration_name::text FROM _prisma_migrations m WHERE m.finished_at IS NOT NULL AND m.rolled_back_at IS NULL;
END $$;
REVOKE ALL ON FUNCTION applied_migrations() FROM PUBLIC;
GRANT EXECUTE ON FUNCTION applied_migrations() TO rootclock_app;
