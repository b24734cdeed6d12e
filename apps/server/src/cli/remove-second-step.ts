// `rootclock remove-second-step <email>`: for an owner without another one, whose phone and recovery codes are lost.
import pg from 'pg';
import { readConfig } from '../config.ts';
import { CommandFailure } from './failure.ts';
import { withNursery } from './nursery-database.ts';

export function removeSecondStep([email]: string[]): Promise<number> {
  if (email === undefined)
    throw new CommandFailure('Say whose: npm run -s rootclock -- remove-second-step name@example.org');
  return withNursery(readConfig(process.env), { purpose: 'remove-second-step' }, async ({ ownerUrl }) => {
    const owner = new pg.Client({ connectionString: ownerUrl });
    await owner.connect();
    try {
      const { rowCount } = await owner.query(
        'DELETE FROM second_step WHERE person_id = (SELECT id FROM person WHERE lower(email) = lower($1))',
        [email.normalize('NFC')],
      );
      if (rowCount === 0) throw new CommandFailure('Nobody with this address has a second step.');
    } finally {
      await owner.end();
    }
    console.log('The second step is off. The password alone signs in again; set a new second step up under Settings.');
    return 0;
  });
}
