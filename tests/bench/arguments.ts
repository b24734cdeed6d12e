import { parseArgs } from 'node:util';

export interface Wanted {
  lots: number;
  movements: number;
  /** Of these lots, how many stand today. */
  live: number;
  seed: number;
  /** How long commands are sent, and replayed, each. */
  seconds: number;
  /** How often each read is asked for, each way. */
  rounds: number;
  /** How long HiGHS may take for one instance of allocation. */
  solverSeconds: number;
  /** Measures allocation alone, which needs no database. */
  only: 'allocation' | undefined;
  json: boolean;
  /** Where the database lies; a folder of the system for temporary files unless named. */
  folder: string | undefined;
}

const number = { type: 'string' } as const;

/** Reads the command line. Throws naming what cannot be used. */
export function readArguments(args: string[]): Wanted {
  const { values } = parseArgs({
    args,
    options: {
      lots: number,
      movements: number,
      live: number,
      seed: number,
      seconds: number,
      rounds: number,
      'solver-seconds': number,
      only: { type: 'string' },
      folder: { type: 'string' },
      json: { type: 'boolean', default: false },
    },
  });
  const whole = (
    name: 'lots' | 'movements' | 'live' | 'seed' | 'seconds' | 'rounds' | 'solver-seconds',
    otherwise: number,
    least: number,
  ) => {
    const given = values[name] === undefined ? otherwise : Number(values[name]);
    if (!Number.isSafeInteger(given) || given < least)
      throw new Error(`--${name} must be a whole number from ${least} on, not ${values[name]}`);
    return given;
  };
  const lots = whole('lots', 100_000, 100);
  const live = whole('live', Math.min(2000, Math.floor(lots / 2)), 20);
  if (live > lots / 2)
    throw new Error('--live must be at most half of --lots: the rest is the closed history that is measured');
  if (values.only !== undefined && values.only !== 'allocation')
    throw new Error(`--only knows allocation, not ${values.only}`);
  return {
    lots,
    live,
    movements: whole('movements', 3_000_000, lots * 8),
    seed: whole('seed', 1, 0),
    seconds: whole('seconds', 10, 1),
    rounds: whole('rounds', 200, 5),
    solverSeconds: whole('solver-seconds', 60, 1),
    only: values.only,
    json: values.json,
    folder: values.folder,
  };
}
