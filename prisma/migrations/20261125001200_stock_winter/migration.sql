-- Winter: what a place needs done, and what was found alive in spring.

ALTER TABLE place
  -- The area plants can stand on, in square metres; null where nobody measured it.
  ADD COLUMN bench_area_m2 numeric(8, 2) CHECK (bench_area_m2 > 0),
  ADD COLUMN cover_md text,
  ADD COLUMN bait_md text,
  ADD COLUMN uncover_md text;

CREATE TABLE spring_count (
  nursery_id uuid NOT NULL,
  id uuid NOT NULL,
  entry_id uuid NOT NULL,
  lot_id uuid NOT NULL,
  place_id uuid NOT NULL,
  counted_on date NOT NULL,
  up_units int NOT NULL CHECK (up_units >= 0),
  dead_units int NOT NULL CHECK (dead_units >= 0),
  -- On hand until the plant's last-emergence day, and then asked about.
  not_up_units int NOT NULL CHECK (not_up_units >= 0),
  PRIMARY KEY (nursery_id, id),
  FOREIGN KEY (nursery_id, entry_id) REFERENCES entry (nursery_id, id),
  FOREIGN KEY (nursery_id, lot_id) REFERENCES lot (nursery_id, id),
  FOREIGN KEY (nursery_id, place_id) REFERENCES place (nursery_id, id)
);
CREATE INDEX spring_count_lot_idx ON spring_count (nursery_id, lot_id, counted_on);
SELECT keep_within_nursery('spring_count'::regclass, 'SELECT, INSERT');
CREATE TRIGGER spring_count_is_kept BEFORE DELETE OR TRUNCATE ON spring_count FOR EACH STATEMENT EXECUTE FUNCTION refuse_delete();
