-- What a nursery learns of a plant rests on all its lots, closed ones included.

CREATE INDEX lot_plant_idx ON lot (nursery_id, plant_id);
