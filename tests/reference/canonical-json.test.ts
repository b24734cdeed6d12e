// The raw input of a command is hashed in the form of RFC 8785 (JSON Canonicalization Scheme). Logs hold these hashes, so the form may never change.
import { createHash } from 'node:crypto';
import fc from 'fast-check';
import { canonicalize } from 'json-canonicalize';
import { expect, test } from 'vitest';
import { inputHashOf } from '../../apps/server/src/trpc/input-hash.ts';

const hashOf = (text: string) => createHash('sha256').update(text).digest('hex');

test('it is the form of the sample in RFC 8785, section 3.2.2', async () => {
  const sent = String.raw`{
    "numbers": [333333333.33333329, 1E30, 4.50, 2e-3, 0.000000000000000000000000001],
    "string": "\u20ac$\u000F\u000aA'\u0042\u0022\u005c\\\"\/",
    "literals": [null, true, false]
  }`;
  const published = String.raw`{"literals":[null,true,false],"numbers":[333333333.3333333,1e+30,4.5,0.002,1e-27],"string":"€$\u000f\nA'B\"\\\\\"/"}`;
  expect(await inputHashOf(JSON.parse(sent), 'salt')).toBe(hashOf(published));
});

test('keys are in the order of the sample in RFC 8785, section 3.2.3', async () => {
  const keys = ['\u20ac', '\r', '\ufb33', '1', '\u{1f600}', '\u0080', '\u00f6'];
  const published = ['\r', '1', '\u0080', '\u00f6', '\u20ac', '\u{1f600}', '\ufb33'];
  const fields = published.map((key) => `${JSON.stringify(key)}:0`);
  expect(await inputHashOf(Object.fromEntries(keys.map((key) => [key, 0])), 'salt')).toBe(
    hashOf(`{${fields.join(',')}}`),
  );
});

test('it is what another program writes of the same value', async () => {
  await fc.assert(
    fc.asyncProperty(fc.json({ stringUnit: 'binary' }), async (sent) => {
      const value: unknown = JSON.parse(sent);
      expect(await inputHashOf(value, 'salt')).toBe(hashOf(canonicalize(value)));
    }),
    { numRuns: 2000 },
  );
});
