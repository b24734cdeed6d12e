import { daysBetween } from '@rootclock/domain';

/** The share of pot life that has passed, 0 to 1; null where no clock runs or no rule limits it. */
export function potShare(since: string | null, plantByOn: string | null, today: string): number | null {
  if (since === null || plantByOn === null) return null;
  const whole = daysBetween(since, plantByOn);
  return whole <= 0 ? 1 : Math.min(1, Math.max(0, daysBetween(since, today) / whole));
}
