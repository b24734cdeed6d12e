import type { Proofs } from './ledger-proofs.ts';

export const seedProofs: Proofs = {
  'seed-store-is-sum': `
    WITH sums AS (SELECT nursery_id, source_id, sum(grams) AS grams FROM seed_movement GROUP BY nursery_id, source_id)
    SELECT coalesce(t.nursery_id, s.nursery_id) AS nursery,
           format('the store of source %s holds %s g, its movements make %s g', coalesce(t.source_id, s.source_id), coalesce(t.grams, 0), coalesce(s.grams, 0)) AS what
      FROM seed_store t FULL JOIN sums s ON s.nursery_id = t.nursery_id AND s.source_id = t.source_id
     WHERE coalesce(t.grams, 0) <> coalesce(s.grams, 0) OR coalesce(t.grams, 0) < 0`,
  'seed-taken-back-once': `
    SELECT r.nursery_id AS nursery, format('seed movement %s does not mirror %s', r.id, r.reverses_id) AS what
      FROM seed_movement r JOIN seed_movement o ON o.nursery_id = r.nursery_id AND o.id = r.reverses_id
     WHERE o.kind = 'taken-back' OR o.source_id <> r.source_id OR o.grams <> -r.grams
    UNION ALL
    SELECT m.nursery_id, format('entry %s was taken back and its seed %s was not', m.entry_id, m.id)
      FROM seed_movement m JOIN entry e ON e.nursery_id = m.nursery_id AND e.reverses_id = m.entry_id
     WHERE m.reverses_id IS NULL AND NOT EXISTS (SELECT 1 FROM seed_movement r WHERE r.nursery_id = m.nursery_id AND r.reverses_id = m.id)`,
  'blends-acyclic': `
    WITH RECURSIVE up AS (
      SELECT nursery_id, source_id AS start, part_source_id AS part FROM source_part
      UNION SELECT u.nursery_id, u.start, p.part_source_id FROM up u JOIN source_part p ON p.nursery_id = u.nursery_id AND p.source_id = u.part)
    SELECT nursery_id AS nursery, format('source %s is blended of itself', start) AS what FROM up WHERE start = part`,
};
