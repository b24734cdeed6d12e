-- Orders that take nothing but what is native to the region of their site, whatever else stands among their alternatives.

ALTER TABLE garden_order ADD COLUMN natives_only boolean NOT NULL DEFAULT false;
