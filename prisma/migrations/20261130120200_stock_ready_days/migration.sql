-- A lot without a day is not ready. Until now it counted as ready since it was potted, whatever was known of its root balls. What came into the nursery
-- as it stood, and what was only split off or merged from such lots, is expected to be ready since then, and now says so by a day; unless a check found
-- that its root balls do not hold yet. What was potted, potted up or divided here without a day says no more than that: it waits for its check.
WITH RECURSIVE made_from (nursery_id, lot_id, at_id) AS (
  SELECT l.nursery_id, l.id, l.id FROM lot l WHERE l.ready_on IS NULL
  UNION
  SELECT d.nursery_id, d.lot_id, g.parent_id
    FROM made_from d
    JOIN lot l ON l.nursery_id = d.nursery_id AND l.id = d.at_id
    JOIN entry e ON e.nursery_id = l.nursery_id AND e.id = l.created_entry_id AND e.kind IN ('split', 'merge')
    JOIN lineage g ON g.nursery_id = l.nursery_id AND g.child_lot_id = l.id AND g.parent_kind = 'lot'),
known AS (
  SELECT d.nursery_id, d.lot_id, max(l.ready_on) AS ready_on,
         bool_or(l.ready_on IS NULL AND (
           e.kind NOT IN ('opening', 'receive', 'split', 'merge')
           OR EXISTS (SELECT 1 FROM entry_subject s
                        JOIN entry c ON c.nursery_id = s.nursery_id AND c.id = s.entry_id AND c.kind = 'observe' AND c.cause = 'root-ball'
                        JOIN observation o ON o.nursery_id = c.nursery_id AND o.entry_id = c.id AND o.result = 'not-yet'
                       WHERE s.nursery_id = l.nursery_id AND s.subject_id = l.id
                         AND NOT EXISTS (SELECT 1 FROM entry r WHERE r.nursery_id = c.nursery_id AND r.reverses_id = c.id)))) AS waits
    FROM made_from d
    JOIN lot l ON l.nursery_id = d.nursery_id AND l.id = d.at_id
    JOIN entry e ON e.nursery_id = l.nursery_id AND e.id = l.created_entry_id
   GROUP BY d.nursery_id, d.lot_id)
UPDATE lot l SET ready_on = greatest(l.potted_on, k.ready_on)
  FROM known k WHERE l.nursery_id = k.nursery_id AND l.id = k.lot_id AND NOT k.waits;
