CREATE TABLE reservation (
  nursery_id uuid NOT NULL,
  line_id uuid NOT NULL,
  -- The lot or batch that holds the units.
  supply_id uuid NOT NULL,
  lot_id uuid,
  batch_id uuid,
  units int NOT NULL CHECK (units > 0),
  pinned boolean NOT NULL DEFAULT false,
  PRIMARY KEY (nursery_id, line_id, supply_id),
  FOREIGN KEY (nursery_id, line_id) REFERENCES order_line (nursery_id, id),
  FOREIGN KEY (nursery_id, lot_id) REFERENCES lot (nursery_id, id),
  FOREIGN KEY (nursery_id, batch_id) REFERENCES batch (nursery_id, id),
  CHECK (num_nonnulls(lot_id, batch_id) = 1),
  CHECK (supply_id = coalesce(lot_id, batch_id))
);
CREATE INDEX reservation_lot_idx ON reservation (nursery_id, lot_id) WHERE lot_id IS NOT NULL;
CREATE INDEX reservation_batch_idx ON reservation (nursery_id, batch_id) WHERE batch_id IS NOT NULL;
