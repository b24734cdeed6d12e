import type { Proofs } from './ledger-proofs.ts';

export const evidenceProofs: Proofs = {
  'evidence-follows-entries': `
    WITH derived AS (
      SELECT d.* FROM nursery n CROSS JOIN LATERAL derive_batch_evidence(n.id, ARRAY(SELECT b.id FROM batch b WHERE b.nursery_id = n.id)) d)
    SELECT coalesce(d.nursery_id, k.nursery_id) AS nursery, format('batch %s: kept is %s, its entries tell %s', coalesce(d.batch_id, k.batch_id), k, d) AS what
      FROM derived d FULL JOIN batch_evidence k ON k.nursery_id = d.nursery_id AND k.batch_id = d.batch_id
     WHERE k IS DISTINCT FROM (d.nursery_id, d.batch_id, d.speaks, d.begun_units, d.counted_units, d.first_up_on, d.missing_units, d.lost_units,
                               d.was_discarded, d.potted_units, d.potted_plants, d.potted_alive)::batch_evidence`,
};
