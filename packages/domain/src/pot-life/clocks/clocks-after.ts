import { type CalendarDate, earliestOf, requireDate } from '../../kernel/dates.ts';
import { InputError } from '../../kernel/input.ts';

/** The two clocks of plants in pots. Both are null for plants in the ground. */
export interface Clocks {
  confinedOn: CalendarDate | null;
  containerOn: CalendarDate | null;
  /** True when one of the days is a guess on the early side. */
  assumed: boolean;
}

/**
 * What happens to plants, as far as clocks care. The first potting out of a batch is `pot`, with what `confinedFrom`
 * says. `merge` also stands for patching a tray with others' cells: the place in the tray is old, so its clock goes on.
 * `clump` puts several plants into one new pot, `divide` cuts a plant into pieces that are potted with fresh roots to make.
 */
export type ClockEvent =
  | { kind: 'pot'; confinedOn: CalendarDate | null; assumed: boolean; on: CalendarDate }
  | { kind: 'pot-up' | 'repot' | 'root-prune'; clocks: Clocks; on: CalendarDate }
  | { kind: 'move' | 'return' | 'split'; clocks: Clocks }
  | { kind: 'merge'; clocks: readonly Clocks[] }
  | { kind: 'clump'; clocks: readonly Clocks[]; on: CalendarDate }
  | { kind: 'divide' | 'lift'; on: CalendarDate }
  | { kind: 'plant-in-ground' };

function together(clocks: readonly Clocks[]): Clocks {
  if (clocks.length === 0) throw new InputError('clocks', 'must hold at least one lot');
  const earliest = (days: (CalendarDate | null)[]) => {
    const known = days.filter((on): on is CalendarDate => on !== null);
    return known.length === 0 ? null : earliestOf(...known);
  };
  return {
    confinedOn: earliest(clocks.map((clock) => clock.confinedOn)),
    containerOn: earliest(clocks.map((clock) => clock.containerOn)),
    assumed: clocks.some((clock) => clock.assumed),
  };
}

/**
 * The clocks after something happened. Potting-up, repotting and root pruning keep the confined clock and start the
 * container's anew; moving, splitting and returning keep both; merging takes the earliest of each; the ground ends both;
 * lifting and dividing start new ones. Dormancy stops none. Throws InputError for a day that does not exist.
 */
export function clocksAfter(event: ClockEvent): Clocks {
  switch (event.kind) {
    case 'pot':
      return { confinedOn: event.confinedOn, containerOn: requireDate('on', event.on), assumed: event.assumed };
    case 'pot-up':
    case 'repot':
    case 'root-prune':
      return { ...event.clocks, containerOn: requireDate('on', event.on) };
    case 'move':
    case 'return':
    case 'split':
      return { ...event.clocks };
    case 'merge':
      return together(event.clocks);
    case 'clump':
      return { ...together(event.clocks), containerOn: requireDate('on', event.on) };
    case 'divide':
    case 'lift':
      return { confinedOn: requireDate('on', event.on), containerOn: event.on, assumed: false };
    case 'plant-in-ground':
      return { confinedOn: null, containerOn: null, assumed: false };
  }
}
