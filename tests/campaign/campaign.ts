// `npm run campaign -- NAME --seed N`: what the suite tries in a small round, tried at length.
import { parseArgs } from 'node:util';
import { checkAllocation } from '../reference/allocation/check-allocation.ts';
import { campaigns } from './campaigns.ts';
import { runFiles } from './run-files.ts';

const names = ['allocation', ...Object.keys(campaigns)];
const usage = `npm run campaign -- NAME --seed N, where NAME is one of ${names.join(', ')}`;

function whole(option: string, given: string, least: number): number {
  const number = Number(given);
  if (given === '' || !Number.isSafeInteger(number) || number < least)
    throw new Error(`--${option} must be a whole number from ${least} on, not ${given}`);
  return number;
}

/** Allocation has no rounds but cases. Standard output holds the count, standard error what differs. */
async function allocation(seed: number, cases: number): Promise<boolean> {
  const mismatches = await checkAllocation(seed, cases);
  console.log(JSON.stringify({ cases, mismatches }));
  return mismatches === 0;
}

/** Round after round until one fails, and then with which seed. */
async function rounds(name: string, seed: number, asked: { runs?: number; rounds?: number }): Promise<boolean> {
  const campaign = campaigns[name];
  if (campaign === undefined) throw new Error(`There is no campaign "${name}": ${usage}.`);
  const runs = asked.runs ?? campaign.runs;
  const count = asked.rounds ?? campaign.rounds;
  for (let round = seed; round < seed + count; round += 1) {
    console.log(`${name}, seed ${round}, round ${round - seed + 1} of ${count}`);
    if (await runFiles(campaign.files, { campaign: name, seed: round, runs })) continue;
    const again = runs === undefined ? '' : ` --runs ${runs}`;
    console.log(`FAILED: npm run campaign -- ${name} --seed ${round} --rounds 1${again}`);
    return false;
  }
  console.log(`passed: ${name}, ${count === 1 ? '1 round' : `${count} rounds`} from seed ${seed}`);
  return true;
}

async function run(): Promise<boolean> {
  const text = { type: 'string' } as const;
  const { values, positionals } = parseArgs({
    allowPositionals: true,
    options: { seed: { ...text, default: '1' }, cases: text, runs: text, rounds: text },
  });
  const [name, ...rest] = positionals;
  if (name === undefined || rest.length > 0) throw new Error(`Ask for one campaign: ${usage}.`);
  const seed = whole('seed', values.seed, 0);
  if (name === 'allocation') return allocation(seed, whole('cases', values.cases ?? '2000', 1));
  return rounds(name, seed, {
    ...(values.runs === undefined ? {} : { runs: whole('runs', values.runs, 1) }),
    ...(values.rounds === undefined ? {} : { rounds: whole('rounds', values.rounds, 1) }),
  });
}

try {
  if (!(await run())) process.exitCode = 1;
} catch (error) {
  console.error(error instanceof Error ? error.message : error);
  process.exitCode = 2;
}
