-- Pictures and papers. Their bytes lie in a store apart, each content once a nursery under its own hash; here stands what there is and where it belongs.

CREATE TABLE file (
  nursery_id uuid NOT NULL REFERENCES nursery (id),
  id uuid NOT NULL DEFAULT gen_random_uuid(),
  sha256 text NOT NULL CHECK (sha256 ~ '^[0-9a-f]{64}$'),
  kind text NOT NULL CHECK (kind IN ('photo', 'paper')),
  media_type text NOT NULL CHECK (media_type IN ('image/jpeg', 'image/webp', 'application/pdf')),
  bytes integer NOT NULL CHECK (bytes > 0),
  width integer CHECK (width > 0),
  height integer CHECK (height > 0),
  -- What lists and pages show of a photo, made once as it came in.
  view_sha256 text CHECK (view_sha256 ~ '^[0-9a-f]{64}$'),
  view_bytes integer CHECK (view_bytes > 0),
  thumb_sha256 text CHECK (thumb_sha256 ~ '^[0-9a-f]{64}$'),
  thumb_bytes integer CHECK (thumb_bytes > 0),
  stored_at timestamptz NOT NULL,
  -- Since then the store holds nothing of it: all that showed it was blanked.
  emptied_at timestamptz,
  PRIMARY KEY (nursery_id, id),
  CONSTRAINT photo_has_sizes CHECK ((kind = 'photo') = (num_nulls(width, height, view_sha256, view_bytes, thumb_sha256, thumb_bytes) = 0)),
  CONSTRAINT paper_is_pdf CHECK ((kind = 'paper') = (media_type = 'application/pdf'))
);
CREATE UNIQUE INDEX file_sha256_key ON file (nursery_id, sha256);

CREATE TABLE attachment (
  nursery_id uuid NOT NULL REFERENCES nursery (id),
  id uuid NOT NULL,
  file_id uuid NOT NULL,
  lot_id uuid,
  batch_id uuid,
  place_id uuid,
  plant_id uuid,
  site_id uuid,
  caption text NOT NULL DEFAULT '' CHECK (length(caption) <= 500),
  taken_on date NOT NULL,
  added_at timestamptz NOT NULL,
  person_id uuid,
  removed_at timestamptz,
  blanked_at timestamptz,
  edition integer NOT NULL DEFAULT 1 CHECK (edition >= 1),
  PRIMARY KEY (nursery_id, id),
  FOREIGN KEY (nursery_id, file_id) REFERENCES file (nursery_id, id),
  FOREIGN KEY (nursery_id, lot_id) REFERENCES lot (nursery_id, id),
  FOREIGN KEY (nursery_id, batch_id) REFERENCES batch (nursery_id, id),
  FOREIGN KEY (nursery_id, place_id) REFERENCES place (nursery_id, id),
  FOREIGN KEY (nursery_id, plant_id) REFERENCES plant (nursery_id, id),
  FOREIGN KEY (nursery_id, site_id) REFERENCES site (nursery_id, id),
  CONSTRAINT attachment_has_one_subject CHECK (num_nonnulls(lot_id, batch_id, place_id, plant_id, site_id) = 1),
  CONSTRAINT blanked_says_nothing CHECK (blanked_at IS NULL OR caption = '')
);
CREATE INDEX attachment_file_idx ON attachment (nursery_id, file_id);
CREATE INDEX attachment_lot_idx ON attachment (nursery_id, lot_id);
CREATE INDEX attachment_batch_idx ON attachment (nursery_id, batch_id);
CREATE INDEX attachment_place_idx ON attachment (nursery_id, place_id);
CREATE INDEX attachment_plant_idx ON attachment (nursery_id, plant_id);
CREATE INDEX attachment_site_idx ON attachment (nursery_id, site_id);

SELECT keep_within_nursery(t::regclass, 'SELECT, INSERT, UPDATE') FROM unnest(ARRAY['file', 'attachment']) t;
CREATE TRIGGER file_is_kept BEFORE DELETE OR TRUNCATE ON file FOR EACH STATEMENT EXECUTE FUNCTION refuse_delete();
CREATE TRIGGER attachment_is_kept BEFORE DELETE OR TRUNCATE ON attachment FOR EACH STATEMENT EXECUTE FUNCTION refuse_delete();

-- Whoever asked to be forgotten gets no new pictures of their garden: at a site of a blanked client nothing may be shown.
CREATE FUNCTION refuse_attachment_of_blanked() RETURNS trigger LANGUAGE plpgsql AS $$
BEGIN
  IF EXISTS (SELECT FROM site s JOIN client k ON k.nursery_id = s.nursery_id AND k.id = s.client_id
              WHERE s.nursery_id = NEW.nursery_id AND s.id = NEW.site_id AND k.blanked_at IS NOT NULL) THEN
    RAISE EXCEPTION 'site % is of a client whose data were blanked', NEW.site_id USING ERRCODE = 'check_violation', CONSTRAINT = 'client_is_blanked';
  END IF;
  RETURN NEW;
END $$;
CREATE TRIGGER attachment_of_blanked BEFORE INSERT OR UPDATE ON attachment FOR EACH ROW
  WHEN (NEW.site_id IS NOT NULL AND NEW.blanked_at IS NULL) EXECUTE FUNCTION refuse_attachment_of_blanked();
