/** The outbox of this browser: its database, its tabs, its clock and the way to the server. */
import { sendCommand, sendEntries } from '../api/client.ts';
import { markStale } from '../api/features.ts';
import { queryClient } from '../api/query-client.ts';
import { tellAnotherPerson } from '../api/tab-person.ts';
import { sendUpload } from '../api/upload.ts';
import { Outbox, type OutboxParts, type Word } from './outbox.ts';
import { deviceStorage } from './storage.ts';
import { transportBy } from './transport.ts';

const NAME = 'rootclock-outbox';

/** One drain in all tabs. Plain http has no locks: there tabs may send the same entry twice, which its command id makes harmless. */
const lock: OutboxParts['lock'] = (work) => ('locks' in navigator ? navigator.locks.request(NAME, work) : work());

function tabs(): OutboxParts['channel'] {
  const channel = new BroadcastChannel(NAME);
  return {
    post: (word) => channel.postMessage(word),
    listen: (take) => channel.addEventListener('message', (event: MessageEvent<Word>) => take(event.data)),
  };
}

let pause: ReturnType<typeof setTimeout> | undefined;
let tellParked: (name: string) => void = () => {};

/** Says what happens when an entry is refused whose form is gone. */
export function onParked(tell: (name: string) => void): void {
  tellParked = tell;
}

const storage = deviceStorage();

export const outbox = new Outbox({
  storage,
  transport: transportBy({
    send: sendCommand,
    sendTogether: sendEntries,
    sendWithBytes: sendUpload,
    bytesOf: storage.bytesOf,
  }),
  lock,
  channel: tabs(),
  now: () => Date.now(),
  // The pause of the head is the only one that matters: a newer one replaces it.
  later: (run, ms) => {
    clearTimeout(pause);
    pause = setTimeout(run, ms);
  },
  onAnswered: (entry) => markStale(queryClient, [entry.name.split('.')[0] ?? '']),
  onParked: (entry) => tellParked(entry.name),
  onAnotherPerson: tellAnotherPerson,
});

window.addEventListener('online', () => void outbox.hurry());
document.addEventListener('visibilitychange', () => {
  if (!document.hidden) void outbox.hurry();
});
