// A module of WebAssembly that was aborted is never asked again.
import { productionPlan, type Programme } from '@rootclock/domain';
import { FreshHighs } from '@rootclock/server/features/planning/plan/solver/fresh-highs';
import { createSolver } from '@rootclock/server/features/planning/plan/solver/highs';
import loadHighs, { type Highs } from 'highs';
import { afterEach, describe, expect, it, vi } from 'vitest';
import { planFacts } from '../../bench/load/planning/plan-facts.ts';

afterEach(() => void vi.restoreAllMocks());

const choice = (name: string, worth: number, amount: number) => [{ name, worth, takes: [{ limit: 0, amount }] }];
const small: Programme = { groups: [choice('a', 5, 6), choice('b', 4, 5), choice('c', 3, 5)], limits: [10] };
/** Long enough that the module has to ask for more memory than it begins with. */
const LARGE = `Maximize\n obj: ${Array.from({ length: 60_000 }, (_, at) => `+ 1 x${at}`).join('\n')}\nSubject To\n c: x0 <= 1\nEnd\n`;

/** The real solver, each module counted; `abort` makes its next answer a real abort for want of memory. */
function counted() {
  const modules: Highs[] = [];
  const state = { aborts: false };
  const fresh = new FreshHighs(async () => {
    const real = await loadHighs();
    modules.push(real);
    const solve = real.solve.bind(real);
    return Object.assign(Object.create(real) as Highs, {
      solve: (...asked: Parameters<Highs['solve']>) => {
        if (!state.aborts) return solve(...asked);
        state.aborts = false;
        vi.spyOn(WebAssembly.Memory.prototype, 'grow').mockImplementation(() => {
          throw new RangeError('as asked: no more memory');
        });
        try {
          return solve(LARGE, {});
        } finally {
          vi.restoreAllMocks();
        }
      },
    });
  });
  return { modules, fresh, abortNext: () => void (state.aborts = true) };
}

describe('after an abort', () => {
  it('the next answer is right and comes from another module', async () => {
    const { modules, fresh, abortNext } = counted();
    const solve = await createSolver(fresh);
    const right = await solve(small);
    expect(right).toEqual({ chosen: ['b', 'c'], within: 0 });
    abortNext();
    await expect(solve(small)).rejects.toThrow(/Aborted/);
    expect(await solve(small)).toEqual(right);
    expect(modules).toHaveLength(2);
    expect(await solve(small)).toEqual(right);
    expect(modules).toHaveLength(2);
  });

  it('plans are as they would have been without it', async () => {
    const { fresh, abortNext } = counted();
    const solve = await createSolver(fresh);
    const facts = planFacts({ plants: 12, weeks: 52, seed: 5, capacityCm2: 100_000 });
    const plan = await productionPlan(facts, solve);
    abortNext();
    await expect(productionPlan(facts, solve)).rejects.toThrow(/Aborted/);
    expect(await productionPlan(facts, solve)).toEqual(plan);
  });

  it('a module that could not be loaded is loaded at the next question', async () => {
    let loads = 0;
    const fresh = new FreshHighs(async () => {
      loads += 1;
      if (loads === 1) throw new Error('as asked');
      return loadHighs();
    });
    await expect(fresh.use((highs) => highs.infinity)).rejects.toThrow('as asked');
    expect(await fresh.use((highs) => highs.infinity)).toBeGreaterThan(1e20);
  });
});
