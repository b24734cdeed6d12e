-- By which rules of the nursery a line is offered alternatives. What is taken of them becomes an ordinary alternative of the line.

CREATE TABLE substitution_rule (
  nursery_id uuid NOT NULL REFERENCES nursery (id),
  id uuid NOT NULL,
  kind text NOT NULL CHECK (kind IN ('another-size', 'same-genus', 'same-habit')),
  -- Whom it reaches: one plant, all of a genus, or with neither every plant.
  plant_id uuid,
  genus text CHECK (length(genus) BETWEEN 2 AND 60),
  penalty int NOT NULL CHECK (penalty BETWEEN 1 AND 100),
  standing text NOT NULL DEFAULT 'own setting',
  note text NOT NULL DEFAULT '',
  retired_on date,
  PRIMARY KEY (nursery_id, id),
  FOREIGN KEY (nursery_id, plant_id) REFERENCES plant (nursery_id, id),
  CHECK (num_nonnulls(plant_id, genus) <= 1)
);
CREATE UNIQUE INDEX substitution_rule_standing_key ON substitution_rule (nursery_id, kind, coalesce(plant_id::text, ''), lower(coalesce(genus, ''))) WHERE retired_on IS NULL;

SELECT keep_within_nursery('substitution_rule'::regclass, 'SELECT, INSERT, UPDATE');
CREATE TRIGGER substitution_rule_is_kept BEFORE DELETE OR TRUNCATE ON substitution_rule FOR EACH STATEMENT EXECUTE FUNCTION refuse_delete();
