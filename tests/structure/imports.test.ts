// Who may import whom is written in .dependency-cruiser.cjs; each rule is one test here.
import { execFileSync } from 'node:child_process';
import { createRequire } from 'node:module';
import path from 'node:path';
import { repositoryRoot } from '@rootclock/server/config';
import { beforeAll, describe, expect, test } from 'vitest';

interface Rule {
  name: string;
  comment?: string;
}

interface Answer {
  summary: {
    totalCruised: number;
    violations: { from: string; to: string; rule: { name: string }; cycle?: { name: string }[] }[];
  };
}

const rules = (
  createRequire(import.meta.url)(path.join(repositoryRoot, '.dependency-cruiser.cjs')) as { forbidden: Rule[] }
).forbidden;

let answer: Answer;
beforeAll(() => {
  // Its command line ends with an error where rules are broken; the answer is on its output either way.
  const args = [
    path.join(repositoryRoot, 'node_modules/dependency-cruiser/bin/dependency-cruise.mjs'),
    '--config',
    '.dependency-cruiser.cjs',
    '--output-type',
    'json',
    'apps',
    'packages',
  ];
  answer = JSON.parse(
    execFileSync(process.execPath, args, { cwd: repositoryRoot, encoding: 'utf8', maxBuffer: 2 ** 28 }),
  ) as Answer;
}, 120_000);

describe('imports', () => {
  test('were read from the whole program', () => {
    expect(answer.summary.totalCruised).toBeGreaterThan(150);
  });

  test.each(rules.map(({ name, comment }) => [name, comment] as const))('%s', (name, comment) => {
    const broken = answer.summary.violations
      .filter((violation) => violation.rule.name === name)
      .map(({ from, to, cycle }) =>
        cycle === undefined ? `${from} imports ${to}` : [from, ...cycle.map((step) => step.name)].join(' imports '),
      );
    expect(broken, comment).toEqual([]);
  });
});
