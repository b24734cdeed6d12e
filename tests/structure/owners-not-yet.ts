// What a feature still touches of another one's tables. This list only grows shorter: what is mended leaves it.

/** Tables that a file reads though they are not its feature's. */
export const stillRead: Record<string, string> = {
  'plants/containers/reads.ts': 'batch lot',
  'pot-life/rules/reads.ts': 'batch lot',
  'promises/orders/reads.ts': 'garden_order',
  'promises/planning/store.ts': 'account line_alternative movement',
  'propagation/batches/forecast/reads.ts': 'batch movement',
  'propagation/batches/history/store.ts': 'account batch entry entry_subject movement',
  'propagation/learning/record/reads.ts': 'account batch entry entry_subject lineage lot movement observation',
  'sources/blends/store.ts': 'batch entry',
};
