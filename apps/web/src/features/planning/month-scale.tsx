/** MonthScale: the months under a chart of weeks, each where its first week begins; every other where they stand close. */
import { useFormat } from '../../lib/format/index.ts';
import './charts.css';

export function MonthScale({ weeks }: { weeks: readonly { startsOn: string }[] }) {
  const { dates } = useFormat();
  const months = weeks.flatMap(({ startsOn }, at) =>
    at > 0 && weeks[at - 1]?.startsOn.slice(0, 7) !== startsOn.slice(0, 7) ? [{ startsOn, at }] : [],
  );
  // Four fit beside each other on the smallest phone, and none may run out at the right.
  const every = Math.ceil(months.length / 4);
  const fits = ({ at }: { at: number }) => at / weeks.length < 0.8;
  return (
    <p className="weeks-months" aria-hidden="true">
      {months
        .filter((_, nth) => nth % every === 0)
        .filter(fits)
        .map(({ startsOn, at }) => (
          <span key={startsOn} style={{ insetInlineStart: `${(at / weeks.length) * 100}%` }}>
            {dates.month(startsOn)}
          </span>
        ))}
    </p>
  );
}
