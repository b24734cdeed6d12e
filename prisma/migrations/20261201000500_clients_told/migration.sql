-- What a page about a client, a site or a bed tells beside its name.
CREATE VIEW client_told WITH (security_invoker = true) AS
SELECT nursery_id, id, name, email, phone, address, lead_days, note, blanked_at, edition FROM client;
GRANT SELECT ON client_told TO rootclock_app;

CREATE VIEW site_told WITH (security_invoker = true) AS
SELECT nursery_id, id, client_id, name, address, region, livestock_near, note, edition FROM site;
GRANT SELECT ON site_told TO rootclock_app;

CREATE VIEW bed_told WITH (security_invoker = true) AS
SELECT nursery_id, id, site_id, name, area_cm2, sun, moisture, note, edition FROM bed;
GRANT SELECT ON bed_told TO rootclock_app;
