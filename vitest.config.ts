import { configDefaults, defineConfig } from 'vitest/config';

const withoutDatabase = ['tests/{structure,reference}/**/*.test.ts'];
const butWith = ['tests/structure/drift.test.ts'];
const exclude = [...configDefaults.exclude, '**/generated/**'];
const setupFiles = ['tests/support/seeded.ts'];

export default defineConfig({
  test: {
    // Two projects, so that pure tests never wait for a database or a browser: `npx vitest run packages` takes a second.
    projects: [
      {
        test: {
          name: 'pure',
          include: ['packages/*/src/**/*.test.ts', 'apps/web/src/**/*.test.{ts,tsx}', ...withoutDatabase],
          exclude: [...exclude, ...butWith],
          setupFiles,
          testTimeout: 30_000,
        },
      },
      {
        test: {
          name: 'system',
          include: ['tests/!(structure|reference)/**/*.test.ts', ...butWith],
          exclude,
          setupFiles,
          globalSetup: ['tests/support/global-setup.ts'],
          // None of these says how fast anything is: they end what hangs, also on a machine that is slow or does much else.
          testTimeout: 120_000,
          hookTimeout: 180_000,
          expect: { poll: { timeout: 60_000 } },
        },
      },
    ],
    // Separate processes: an engine in WebAssembly or a crashed test takes only its own file down.
    pool: 'forks',
    maxWorkers: 2,
    retry: 0,
    allowOnly: false,
    passWithNoTests: false,
  },
});
