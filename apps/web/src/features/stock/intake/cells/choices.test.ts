import { describe, expect, it } from 'vitest';
import { containerChoices, placeChoices } from './choices.ts';

const container = (code: string, name: string, volumeMl: number) => ({
  id: code,
  code,
  name,
  volumeMl,
  depthMm: null,
  cells: null,
});
const containers = [
  container('pot-1l', '1 litre pot', 1000),
  container('tall-1l', 'Tall pot, 1 litre', 1000),
  container('plug-50', 'Plug tray, 50 cells', 60),
];
const kinds = { bench: 'bench', house: 'house' };
const places = [
  { placeId: 'b1', code: 'B1', name: 'B1', kind: 'bench' as const },
  { placeId: 'b10', code: 'B10', name: 'B10', kind: 'bench' as const },
  { placeId: 'n', code: 'N', name: 'North house', kind: 'house' as const },
];
const settled = (text: string) => containerChoices(containers, text, () => '').settledId;
const settledPlace = (text: string) => placeChoices(places, text, kinds).settledId;

describe('a few letters', () => {
  it('mean the only container that fits', () => {
    expect([settled('plug'), settled('tall'), settled('tray 50')]).toEqual(['plug-50', 'tall-1l', 'plug-50']);
  });

  it('mean nothing yet where several fit', () => {
    expect(settled('1 litre')).toBeNull();
    expect(containerChoices(containers, '1 litre', () => '').options.map((option) => option.id)).toEqual([
      'pot-1l',
      'tall-1l',
    ]);
  });

  it('mean the place with that whole code, though another begins with it', () => {
    expect(settledPlace('b1')).toBe('b1');
    expect(placeChoices(places, 'b1', kinds).options[0]?.id).toBe('b1');
  });

  it('mean a place by its name', () => {
    expect(settledPlace('north')).toBe('n');
  });

  it('offer everything and mean nothing when there are none', () => {
    expect(placeChoices(places, '', kinds)).toMatchObject({
      settledId: null,
      options: [{ id: 'b1' }, { id: 'b10' }, { id: 'n' }],
    });
  });
});
