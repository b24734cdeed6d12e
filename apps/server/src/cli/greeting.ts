// What is printed once the server answers: where, and how to get in.
import { openDatabase } from '../db/pool.ts';
import { DEMO_SIGN_INS } from '../features/people/demo-sign-ins.ts';
import { setupFacts } from '../features/people/store.ts';

/** The lines for whoever started the server: the demo's people, or that the first visit makes the first owner. */
export async function greeting(databaseUrl: string, addresses: string[]): Promise<string[]> {
  const database = openDatabase(databaseUrl, { connections: 1 });
  try {
    const { anyNursery, demo } = await setupFacts(database);
    return [
      `Rootclock is ready at ${addresses.join(' and ')}`,
      ...(anyNursery ? [] : ['There is no nursery yet: the first visit makes its owner.']),
      ...(demo ? demoLines() : []),
      'Stop it with Ctrl-C.',
    ];
  } finally {
    await database.close();
  }
}

function demoLines(): string[] {
  const width = (pick: (one: (typeof DEMO_SIGN_INS)[number]) => string) =>
    Math.max(...DEMO_SIGN_INS.map((one) => pick(one).length));
  const [roles, emails] = [width((one) => one.role), width((one) => one.email)];
  return [
    'This is the demo nursery, invented from end to end. Sign in as',
    ...DEMO_SIGN_INS.map(
      ({ role, email, password }) => `  ${role.padEnd(roles)}  ${email.padEnd(emails)}  ${password}`,
    ),
  ];
}
