/** The clock of this browser: the device's, put right by what the server's answers say. */
import { useSyncExternalStore } from 'react';
import { DayWatch } from './day-watch.ts';
import { type HeardInstant, ServerTime } from './server-time.ts';

const serverTime = new ServerTime();
let goesByDevice = false;

/** The server's clock in milliseconds, also without a connection; the device's until the server was heard. */
export const serverNow = (): number => serverTime.at(Date.now()) ?? Date.now();

export const dayWatch = new DayWatch({
  now: () => serverTime.at(Date.now()) ?? (goesByDevice ? Date.now() : null),
  alarm: (run, ms) => {
    const timer = setTimeout(run, ms);
    return () => clearTimeout(timer);
  },
});

/** The app opened without a line: until the server is heard, the day is the device's. */
export function goByDevice(): void {
  goesByDevice = true;
  dayWatch.check();
}

export function hearInstant(heard: HeardInstant): void {
  serverTime.hear(heard);
  dayWatch.check();
}

/** The day in the nursery's zone, drawn anew when it turns; null while only the server can say it. */
export const useDayHere = (): string | null => useSyncExternalStore(dayWatch.subscribe, dayWatch.today);

/** Alarms sleep with the phone: whatever tells that somebody looks at the page again makes up for them. */
export function wakeWithDevice(): void {
  document.addEventListener('visibilitychange', dayWatch.check);
  for (const wakes of ['pageshow', 'focus', 'online']) window.addEventListener(wakes, dayWatch.check);
}
