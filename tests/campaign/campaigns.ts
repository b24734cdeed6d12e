// What the suite tries in a small round, and can be tried at length: each round has a seed of its own.
export interface Campaign {
  files: string[];
  /** How often each property is tried in a round; left out where the files hold no property. */
  runs?: number;
  rounds: number;
}

export const campaigns: Record<string, Campaign> = {
  model: { files: ['tests/model'], runs: 500, rounds: 4 },
  history: { files: ['tests/history'], rounds: 10 },
  crash: { files: ['tests/crash/kill-under-load.test.ts', 'tests/crash/database-restart.test.ts'], rounds: 10 },
  'any-course': {
    files: [
      'tests/integration/promises/any-course.test.ts',
      'tests/integration/promises/carried-pins.test.ts',
      'tests/integration/promises/foreseen.test.ts',
      'tests/integration/promises/treated-by-lineage.test.ts',
      'tests/integration/promises/what-if/any-change.test.ts',
      'tests/integration/stock-lots/reversing.test.ts',
    ],
    runs: 100,
    rounds: 4,
  },
  rubbish: { files: ['tests/access/rubbish.test.ts'], runs: 100, rounds: 4 },
  'others-meanwhile': { files: ['tests/integration/promises/others-meanwhile.test.ts'], rounds: 3 },
  'every-screen': { files: ['tests/browser/every-screen.test.ts'], rounds: 1 },
};
