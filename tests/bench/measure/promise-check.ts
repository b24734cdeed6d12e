// What the promise check costs where nearly all lines hang together by their substitutes and more is asked for than there is. No database takes part.
import { addDays, allocate, promise } from '@rootclock/domain';
import { drawSeason } from '../../support/allocation/season.ts';
import { streamOf } from '../load/chance.ts';
import { spread, type Spread } from './figures.ts';

export const MOST_CHECK_MS = 100;
const SIZE = { supplies: 2000, lines: 500 };
const TIMES = 100;

export interface PromiseCheckFigures extends Spread {
  supplies: number;
  lines: number;
  /** Of the processor; a machine that does other work as well makes it hardly longer. */
  cpu: Spread;
  met: boolean;
}

/** Asks for what lines ask for, on days around theirs, with all lines holding what they were allocated. */
export function measurePromiseCheck(seed: number): PromiseCheckFigures {
  const season = drawSeason({ shape: 'scarce', ...SIZE, ranks: SIZE.lines }, seed);
  const instance = { ...season, current: allocate(season).assignments };
  const chance = streamOf(seed, 'promise checks');
  const taken = Array.from({ length: TIMES }, () => {
    const { accepts, on } = chance.pick(instance.demand);
    const ask = { accepts, units: chance.whole(1, 200), on: addDays(on, chance.whole(-20, 20)) };
    const [from, cpuFrom] = [performance.now(), process.cpuUsage()];
    promise(instance, ask);
    const { user, system } = process.cpuUsage(cpuFrom);
    return { ms: performance.now() - from, cpuMs: (user + system) / 1000 };
  });
  const figures = spread(taken.map(({ ms }) => ms));
  const cpu = spread(taken.map(({ cpuMs }) => cpuMs));
  return { ...SIZE, ...figures, cpu, met: cpu.p95Ms < MOST_CHECK_MS };
}
