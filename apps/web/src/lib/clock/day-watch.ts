/** The day in the nursery's zone, as it passes: an alarm at the nursery's midnight, set anew whenever the clock is looked at. */
import { dayIn, nextDayAt } from './zone-day.ts';

export interface DayWatchParts {
  /** The server's clock in milliseconds; null while nobody knows it. */
  now: () => number | null;
  /** Runs something after so many milliseconds, or late where the device slept; answers how to call it off. */
  alarm: (run: () => void, ms: number) => () => void;
}

export class DayWatch {
  private zone: string | null = null;
  private day: string | null = null;
  private callOff: () => void = () => {};
  private readonly listeners = new Set<() => void>();
  private readonly onNewDay = new Set<() => void>();

  constructor(private readonly parts: DayWatchParts) {}

  /** `YYYY-MM-DD`; null before zone and clock are known, and in a zone that this browser has not heard of. */
  readonly today = (): string | null => this.day;

  readonly subscribe = (listener: () => void): (() => void) => {
    this.listeners.add(listener);
    return () => this.listeners.delete(listener);
  };

  /** Called when one day has become another, not when the first is learned. */
  whenDayTurns(listener: () => void): void {
    this.onNewDay.add(listener);
  }

  keepZone(zone: string): void {
    if (zone === this.zone) return;
    this.zone = zone;
    this.check();
  }

  /** Looks at the clock: the alarm does, and whoever has cause to believe that time has passed or was wrong. */
  readonly check = (): void => {
    this.callOff();
    const before = this.day;
    this.day = this.look();
    if (this.day === before) return;
    for (const listener of this.listeners) listener();
    if (before !== null && this.day !== null) for (const listener of this.onNewDay) listener();
  };

  private look(): string | null {
    const now = this.parts.now();
    if (this.zone === null || now === null) return null;
    try {
      this.callOff = this.parts.alarm(this.check, nextDayAt(now, this.zone) - now);
      return dayIn(now, this.zone);
    } catch (error) {
      if (!(error instanceof RangeError)) throw error;
      return null;
    }
  }
}
