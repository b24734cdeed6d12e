// The real server over one database, in a process of its own; its clock stands at the moment that the history ends at.
import type { AddressInfo } from 'node:net';
import { createApp } from '@rootclock/server/app';
import { NOW } from './nursery.ts';

const [databaseUrl] = process.argv.slice(2);
if (databaseUrl === undefined || !process.send) throw new Error('this program is started by the bench');

// One address asks for everything here, as fast as it is answered.
const app = await createApp({ databaseUrl, clock: () => NOW, callsAMinute: Number.MAX_SAFE_INTEGER });
await app.listen({ host: '127.0.0.1', port: 0 });
// It must not outlive who started it, however that ended.
process.once('disconnect', () => void app.close());
process.send((app.server.address() as AddressInfo).port);
