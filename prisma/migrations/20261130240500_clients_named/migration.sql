-- What other features read of clients and their sites: what they are called, and what promises rest on. How a client is reached is not in it.
CREATE VIEW client_named WITH (security_invoker = true) AS
SELECT nursery_id, id, name, lead_days, blanked_at FROM client;
GRANT SELECT ON client_named TO rootclock_app;

CREATE VIEW site_named WITH (security_invoker = true) AS
SELECT nursery_id, id, client_id, name, region, livestock_near FROM site;
GRANT SELECT ON site_named TO rootclock_app;
