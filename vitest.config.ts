import { configDefaults, defineConfig } from 'vitest/config';

const exclude = [...configDefaults.exclude, '**/generated/**'];

export default defineConfig({
  test: {
    // Two projects, so that pure tests never wait for a database or a browser: `npx vitest run packages` takes a second.
    projects: [
      {
        test: {
          name: 'pure',
          include: ['packages/*/src/**/*.test.ts', 'apps/*/src/**/*.test.{ts,tsx}', 'tests/{structure,reference}/**/*.test.ts'],
          exclude,
          testTimeout: 30_000,
        },
      },
      {
        test: {
          name: 'system',
          include: ['tests/**/*.test.ts'],
          exclude: [...exclude, 'tests/{structure,reference}/**'],
          globalSetup: ['tests/support/global-setup.ts'],
          testTimeout: 60_000,
          hookTimeout: 60_000,
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
