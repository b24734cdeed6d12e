import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { ServerTime } from './server-time.ts';

const HOUR = 3_600_000;

/** One question and its answer: the true instants at which it is sent, stamped and received, on a device that is off by so much. */
const heard = (offBy: number, sent: number, there: number, back: number) => ({
  sentAt: sent + offBy,
  stampedAt: sent + there,
  receivedAt: sent + there + back + offBy,
});

describe('the server’s clock', () => {
  it('is not known before an answer', () => {
    expect(new ServerTime().at(5_000)).toBeNull();
  });

  it('is known through a device that is nine hours off, in either direction', () => {
    for (const offBy of [9 * HOUR, -9 * HOUR]) {
      const time = new ServerTime();
      time.hear(heard(offBy, 1_000_000, 40, 60));
      expect(Math.abs((time.at(2_000_000 + offBy) ?? 0) - 2_000_000)).toBeLessThanOrEqual(50);
    }
  });

  it('is never farther off than half of the quickest answer took, however slow the others were', () => {
    const trip = fc.record({
      gap: fc.nat({ max: HOUR }),
      there: fc.nat({ max: 20_000 }),
      back: fc.nat({ max: 20_000 }),
    });
    fc.assert(
      fc.property(
        fc.integer({ min: -30 * HOUR, max: 30 * HOUR }),
        fc.array(trip, { minLength: 1, maxLength: 12 }),
        (offBy, trips) => {
          const time = new ServerTime();
          let now = 1_700_000_000_000;
          for (const { gap, there, back } of trips) {
            now += gap;
            time.hear(heard(offBy, now, there, back));
            now += there + back;
          }
          const quickest = Math.min(...trips.map(({ there, back }) => there + back));
          expect(Math.abs((time.at(now + offBy) ?? 0) - now)).toBeLessThanOrEqual(quickest / 2 + 1);
        },
      ),
    );
  });

  it('follows a device whose clock is set while the page is open, from the next answer on', () => {
    const time = new ServerTime();
    time.hear(heard(0, 1_000_000, 30, 30));
    time.hear(heard(-3 * HOUR, 1_100_000, 30, 30));
    expect(time.at(1_200_000 - 3 * HOUR)).toBe(1_200_000);
  });

  it('lets one answer that slept with the phone spoil nothing', () => {
    const time = new ServerTime();
    time.hear(heard(0, 1_000_000, 30, 30));
    time.hear(heard(0, 2_000_000, 100, 8 * HOUR));
    expect(time.at(3_000_000)).toBe(3_000_000);
  });

  it('takes an answer whose device was set back meanwhile', () => {
    const time = new ServerTime();
    time.hear({ sentAt: 9 * HOUR, stampedAt: 1_000, receivedAt: 1_050 });
    expect(time.at(2_000)).toBe(1_950);
  });
});
