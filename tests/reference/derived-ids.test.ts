// Ids that follow from words are in every database that was ever filled: a change of the function would load plants anew and roll days twice.
import { expect, test } from 'vitest';
import { derivedId } from '../../apps/server/src/derived-id.ts';

const NURSERY = '7d2f4e1a-0c55-4b8e-9a6d-3f21c0b7e845';

test.each([
  [['roll-day', NURSERY, '2026-05-20'], 'd09c50dd-5078-8ee3-ac30-99e2b046ec7a'],
  [['reference', NURSERY, 'plant', 'ASTU'], '1a326c2d-3b62-8ddb-ac30-240ed3c50586'],
  [['after', NURSERY], 'cf120194-7a33-8fee-a456-7c778b7c7a4d'],
])('%j have the id they had on 2026-11-24', (words, id) => {
  expect(derivedId(...words)).toBe(id);
});
