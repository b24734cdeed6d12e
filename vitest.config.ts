import { configDefaults, defineConfig } from 'vitest/config';
import { LongestFirst } from './tests/support/longest-first.ts';

const withoutDatabase = ['tests/{structure,reference}/**/*.test.ts'];
const butWith = ['tests/structure/drift.test.ts'];
/** What replaces or breaks something that every test of a process shares: each of these gets a process of its own. */
const apart = ['tests/integration/planning/solver-abort.test.ts', 'tests/integration/promises/solving-thread.test.ts'];
const exclude = [...configDefaults.exclude, '**/generated/**', ...apart];
const setupFiles = ['tests/support/seeded.ts'];

export default defineConfig({
  test: {
    // Projects of their own, so that pure tests never wait for a database or a browser: `npx vitest run packages` takes a second.
    projects: [
      { test: { name: 'apart', include: apart, setupFiles, testTimeout: 120_000 } },
      {
        test: {
          name: 'pure',
          include: ['packages/*/src/**/*.test.ts', 'apps/web/src/**/*.test.{ts,tsx}', ...withoutDatabase],
          exclude: [...exclude, ...butWith],
          // Reading the sources anew for each file took longer than its tests.
          isolate: false,
          setupFiles,
          testTimeout: 30_000,
        },
      },
      {
        test: {
          name: 'system',
          include: ['tests/!(structure|reference)/**/*.test.ts', ...butWith],
          exclude,
          isolate: false,
          setupFiles,
          globalSetup: ['tests/support/global-setup.ts'],
          // None of these says how fast anything is: they end what hangs, also on a machine that is slow or does much else.
          testTimeout: 120_000,
          hookTimeout: 180_000,
          expect: { poll: { timeout: 60_000 } },
        },
      },
    ],
    sequence: { sequencer: LongestFirst },
    // Separate processes: an engine in WebAssembly or a crashed test takes only its own worker down.
    pool: 'forks',
    maxWorkers: 2,
    retry: 0,
    allowOnly: false,
    passWithNoTests: false,
  },
});
