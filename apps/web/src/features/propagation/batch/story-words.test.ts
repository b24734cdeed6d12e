import { describe, expect, it } from 'vitest';
import { propagation as english } from '../../../messages/en/propagation/index.ts';
import { propagation as spanish } from '../../../messages/es/propagation/index.ts';
import type { StoryEntry } from '../batch-page-data.ts';
import { storyWords } from './story-words.ts';

const plain: StoryEntry = {
  entryId: 'e',
  version: 1,
  kind: 'observe',
  happenedOn: '2026-05-10',
  recordedAt: '2026-05-10T17:00:00Z',
  personName: null,
  cause: null,
  note: '',
  details: {},
  reversesId: null,
  reversedById: null,
  count: null,
  observed: null,
  movements: [],
};
const moved = {
  fromPlace: 'B3',
  toPlace: null,
  drawnFor: null,
  drawnFrom: null,
  toLotId: null,
  toLotCode: null,
  outside: null,
  fromUnits: 0,
  toUnits: 0,
};
const said = (entry: Partial<StoryEntry>) => storyWords({ ...plain, ...entry }, 'cell', english);

describe('an entry of a batch in words', () => {
  it('says both sides of a potting and its lots', () => {
    expect(said({ kind: 'pot', movements: [{ ...moved, toLotCode: 'ASTU-26-014', fromUnits: 60, toUnits: 66 }] })).toBe(
      'Potted 66 from 60 cells into ASTU-26-014',
    );
  });
  it('says what was alive and how sure it is', () => {
    expect(said({ kind: 'count', count: { countKind: 'sampled', emergedUnits: 70, unexplainedUnits: 0 } })).toBe(
      '70 alive, sampled',
    );
  });
  it('tells a corrected number of cells from a count of plants', () => {
    expect(
      said({ kind: 'count', details: { correctedUnits: { booked: 100, counted: 97, countKind: 'counted' } } }),
    ).toBe('Corrected from 100 cells to 97 cells');
  });
  it('says why units were written off', () => {
    expect(said({ kind: 'close', cause: 'failed', movements: [{ ...moved, fromUnits: 1 }] })).toBe(
      'Closed, 1 cell written off: never came up or rooted',
    );
  });
  it('says what was expected, kept and seen', () => {
    expect([
      said({ details: { forecast: { cautiousUnits: 40 } } }),
      said({ details: { secondWinter: true } }),
      said({ observed: { kind: 'pest', result: 'aphids', amount: null } }),
    ]).toEqual(['May be promised: 40 plants', 'Kept for a second winter', 'Pests seen: aphids']);
  });
  it('says which stage began', () => {
    expect(said({ details: { stage: { position: 3, kind: 'growing-on' } } })).toBe('Growing on began');
  });
  it('says what packs were drawn on, on either side', () => {
    const drawn = { kind: 'convert', movements: [{ ...moved, fromUnits: 2, toUnits: 144 }] };
    expect(said({ ...drawn, movements: [{ ...moved, fromUnits: 2, toUnits: 144, drawnFrom: 'ASTU-26-001' }] })).toBe(
      '144 cells started with seed from the packs of ASTU-26-001',
    );
    expect(
      storyWords(
        { ...plain, ...drawn, movements: [{ ...moved, fromUnits: 2, toUnits: 144, drawnFor: 'ASTU-26-004' }] },
        'pack',
        english,
      ),
    ).toBe('2 packs drawn for ASTU-26-004');
    expect(
      storyWords(
        { ...plain, ...drawn, movements: [{ ...moved, fromUnits: 0, toUnits: 144, drawnFor: 'ASTU-26-004' }] },
        'pack',
        english,
      ),
    ).toBe('Seed drawn for ASTU-26-004; every pack stays in use');
  });
  it('speaks Spanish', () => {
    expect(storyWords({ ...plain, kind: 'start', movements: [{ ...moved, toUnits: 144 }] }, 'cell', spanish)).toBe(
      'Empezada con 144 alvéolos',
    );
  });
});
