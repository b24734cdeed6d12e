import { describe, expect, it } from 'vitest';
import { DayWatch } from './day-watch.ts';

/** A device whose clock moves when the test says so. Its alarms sleep with it: they ring late, and only when it is awake. */
function device(start: string) {
  let now: number | null = Date.parse(start);
  let alarms: { at: number; run: () => void }[] = [];
  const watch = new DayWatch({
    now: () => now,
    alarm: (run, ms) => {
      const alarm = { at: (now ?? 0) + ms, run };
      alarms.push(alarm);
      return () => void (alarms = alarms.filter((each) => each !== alarm));
    },
  });
  const turned: (string | null)[] = [];
  watch.whenDayTurns(() => turned.push(watch.today()));
  return {
    watch,
    turned,
    alarms: () => alarms.length,
    sleep: (until: string) => void (now = Date.parse(until)),
    forget: () => void (now = null),
    ring: () => {
      const due = alarms.filter(({ at }) => at <= (now ?? 0));
      alarms = alarms.filter((each) => !due.includes(each));
      for (const { run } of due) run();
    },
  };
}

describe('the day of a page that stays open', () => {
  it.each([
    ['America/Chicago', '2026-05-20T17:00:00Z', '2026-05-21T05:00:00Z', '2026-05-20', '2026-05-21'],
    ['Pacific/Auckland', '2026-05-20T17:00:00Z', '2026-05-21T12:00:00Z', '2026-05-21', '2026-05-22'],
    // The nights on which the clocks change.
    ['America/Chicago', '2026-03-08T06:30:00Z', '2026-03-09T05:00:00Z', '2026-03-08', '2026-03-09'],
    ['America/Chicago', '2026-11-01T05:30:00Z', '2026-11-02T06:00:00Z', '2026-11-01', '2026-11-02'],
  ])('turns by its alarm at midnight in %s', (zone, from, midnight, day, next) => {
    const { watch, sleep, ring, turned } = device(from);
    watch.keepZone(zone);
    expect(watch.today()).toBe(day);
    sleep(new Date(Date.parse(midnight) - 1).toISOString());
    ring();
    expect(watch.today()).toBe(day);
    sleep(midnight);
    ring();
    expect([watch.today(), turned]).toEqual([next, [next]]);
  });

  it('turns each night, with one alarm at a time', () => {
    const { watch, sleep, ring, turned, alarms } = device('2026-05-20T17:00:00Z');
    watch.keepZone('America/Chicago');
    for (const day of ['21', '22', '23']) {
      sleep(`2026-05-${day}T05:00:00Z`);
      ring();
      watch.check();
      expect(alarms()).toBe(1);
    }
    expect(turned).toEqual(['2026-05-21', '2026-05-22', '2026-05-23']);
  });

  it('turns when somebody looks again, where the alarm slept with the phone', () => {
    const { watch, sleep, turned } = device('2026-05-20T17:00:00Z');
    watch.keepZone('America/Chicago');
    sleep('2026-05-24T13:00:00Z');
    watch.check();
    expect([watch.today(), turned]).toEqual(['2026-05-24', ['2026-05-24']]);
  });

  it('is told to whoever follows it, once a change', () => {
    const { watch, sleep } = device('2026-05-20T17:00:00Z');
    let told = 0;
    const stop = watch.subscribe(() => (told += 1));
    watch.keepZone('America/Chicago');
    watch.check();
    sleep('2026-05-21T13:00:00Z');
    watch.check();
    stop();
    sleep('2026-05-22T13:00:00Z');
    watch.check();
    expect(told).toBe(2);
  });

  it('moves with a nursery that moves to another zone', () => {
    const { watch, turned } = device('2026-05-20T17:00:00Z');
    watch.keepZone('America/Chicago');
    watch.keepZone('Pacific/Auckland');
    expect([watch.today(), turned]).toEqual(['2026-05-21', ['2026-05-21']]);
  });

  it('is for the server to say where the clock or the zone is not known', () => {
    const { watch, forget } = device('2026-05-20T17:00:00Z');
    watch.keepZone('Nowhere/Atall');
    expect(watch.today()).toBeNull();
    watch.keepZone('America/Chicago');
    expect(watch.today()).toBe('2026-05-20');
    forget();
    watch.check();
    expect(watch.today()).toBeNull();
  });
});
