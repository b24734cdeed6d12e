import { describe, expect, it } from 'vitest';
import { startBatchLink } from '../../../lib/paths.ts';
import { readAsk } from './start-ask.ts';

const plantId = '0f8b6d0a-3c1e-4b5a-9d2f-7a6c5b4d3e2f';
const asked = (search: Record<string, unknown>) =>
  Object.fromEntries(Object.entries(readAsk(search)).filter(([, value]) => value !== null));

describe('what an address asks of the form that starts a batch', () => {
  it('is what a link to it was made with', () => {
    const ask = {
      plantId,
      protocolVersionId: plantId,
      sourceId: plantId,
      trays: 4,
      seedGrams: 2.125,
      targetContainerId: plantId,
      readyOn: '2027-06-01',
      cautiousUnits: 0,
      usualUnits: 120,
      stagePosition: 1,
      placeId: plantId,
      day: '2027-02-01',
    };
    expect(asked(startBatchLink(ask).search)).toEqual(ask);
  });
  it('leaves out what a link says nothing of', () => {
    expect(startBatchLink({ plantId, sourceId: null, day: undefined })).toEqual({
      to: '/propagation/start',
      search: { plantId },
    });
  });
  it('is read from text as well, as addresses typed by hand are', () => {
    expect(asked({ units: '12', cautiousUnits: '0' })).toEqual({ units: 12, cautiousUnits: 0 });
  });
  it.each([
    [{ plantId: 'monarda' }],
    [{ units: '0' }],
    [{ units: '1.5' }],
    [{ trays: '-2' }],
    [{ seedGrams: 'some' }],
    [{ readyOn: '2027-02-30' }],
    [{ stagePosition: 99 }],
    [{ cautiousUnits: '' + Number.NaN }],
    [{}],
  ])('is nothing for %j', (search) => expect(asked(search)).toEqual({}));
});
