/** The kept reads of this browser: its database, its clock, and the build that runs. */
import { clear, createStore, get, promisifyRequest, set } from 'idb-keyval';
import { goByDevice, serverNow } from '../clock/index.ts';
import { isText, onDevice } from '../remember.ts';
import { KeptReads, type KeptRead } from './kept-reads.ts';

const OWNER = 'reads-of';
const store = createStore('rootclock-reads', 'reads');

export const keptReads = new KeptReads({
  records: {
    get: (key) => get<KeptRead>(key, store),
    put: (key, read) => set(key, read, store),
    clear: () => clear(store),
    sweep: (before) =>
      store('readwrite', (records) => {
        records.openCursor().onsuccess = function () {
          if (!this.result) return;
          if ((this.result.value as KeptRead).at < before) this.result.delete();
          this.result.continue();
        };
        return promisifyRequest(records.transaction);
      }),
  },
  owner: {
    read: () => {
      const kept = onDevice.read(OWNER);
      return isText(kept) ? kept : null;
    },
    write: (personId) => onDevice.keep(OWNER, personId),
  },
  // Built files are named after what is in them and in those that they load.
  build: new URL(import.meta.url).pathname,
  now: serverNow,
  after: (ms, run) => void setTimeout(run, ms),
  onShown: goByDevice,
});
