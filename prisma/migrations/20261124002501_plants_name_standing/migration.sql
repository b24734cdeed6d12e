-- On whose word a plant bears a name: a page must tell a remembered name from the nursery's own.
ALTER TABLE plant_name ADD COLUMN standing text NOT NULL DEFAULT 'own setting';
