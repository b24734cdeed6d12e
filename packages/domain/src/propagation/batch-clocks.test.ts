import { describe, expect, it } from 'vitest';
import { batchClocks, pottedClocks, startsWithFirstAlive } from './batch-clocks.ts';
import type { BatchKind } from './words.ts';

const novemberSowing: BatchKind = { method: 'seed', unit: 'cell', containerKind: 'tray', startedOn: '2025-11-12' };
const flat: BatchKind = { method: 'seed', unit: 'tray', containerKind: 'flat', startedOn: '2026-03-01' };
const cuttings: BatchKind = { method: 'cutting', unit: 'piece', containerKind: 'flat', startedOn: '2026-06-10' };
const divisions: BatchKind = { method: 'division', unit: 'piece', containerKind: null, startedOn: '2026-04-20' };

describe('the clocks of a batch', () => {
  it('do not run for seed sown in November until it comes up', () => {
    expect(batchClocks(novemberSowing, null)).toEqual({ confinedOn: null, containerOn: null, assumed: false });
  });
  it('start with first emergence in cells', () => {
    expect(batchClocks(novemberSowing, { on: '2026-04-25', assumed: false })).toEqual({
      confinedOn: '2026-04-25',
      containerOn: '2026-04-25',
      assumed: false,
    });
  });
  it('confine nothing in an open flat', () => {
    expect(batchClocks(flat, { on: '2026-03-20', assumed: false }).confinedOn).toBeNull();
  });
  it('confine cuttings from the first rooted count, although they stood in their flat before', () => {
    expect(batchClocks(cuttings, { on: '2026-07-01', assumed: false })).toEqual({
      confinedOn: '2026-07-01',
      containerOn: '2026-06-10',
      assumed: false,
    });
  });
  it('confine a division in a cell from its start', () => {
    expect(batchClocks({ ...divisions, unit: 'cell', containerKind: 'tray' }, null).confinedOn).toBe('2026-04-20');
  });
  it('run for no container where there is none', () => {
    expect(batchClocks(divisions, null)).toEqual({ confinedOn: null, containerOn: null, assumed: false });
  });
});

describe('the clocks of what is potted from a batch', () => {
  it('keep the first emergence of plugs that overwintered in their trays', () => {
    const plugs: BatchKind = { ...novemberSowing, startedOn: '2025-03-10' };
    expect(pottedClocks(plugs, { on: '2025-04-02', assumed: false }, 'pot', '2026-05-06')).toEqual({
      confinedOn: '2025-04-02',
      containerOn: '2026-05-06',
      assumed: false,
    });
  });
  it('start with pricking out of an open flat, whenever it came up', () => {
    expect(pottedClocks(flat, { on: '2026-03-20', assumed: false }, 'pot', '2026-04-14').confinedOn).toBe('2026-04-14');
  });
  it('start with potting for loose divisions', () => {
    expect(pottedClocks(divisions, null, 'pot', '2026-04-21').confinedOn).toBe('2026-04-21');
  });
  it('stay unknown for cells whose emergence nobody saw', () => {
    expect(pottedClocks(novemberSowing, null, 'pot', '2026-05-10').confinedOn).toBeNull();
    expect(startsWithFirstAlive(novemberSowing)).toBe(true);
  });
  it('are assumed when the emergence is', () => {
    expect(pottedClocks(novemberSowing, { on: '2026-04-01', assumed: true }, 'pot', '2026-05-10').assumed).toBe(true);
  });
  it('do not run in the ground of a nursery bed', () => {
    expect(pottedClocks(novemberSowing, { on: '2026-04-01', assumed: false }, 'ground', '2026-05-10')).toEqual({
      confinedOn: null,
      containerOn: null,
      assumed: false,
    });
  });
});
