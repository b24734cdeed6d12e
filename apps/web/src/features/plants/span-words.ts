/** An ISO 8601 span in the reader's words; empty for a rule without one. */
import { useMessages } from '../../messages/index.ts';

const PARTS = /^P(?:(\d+)Y)?(?:(\d+)M)?(?:(\d+)W)?(?:(\d+)D)?$/;

export function useSpanWords(): (span: string | null) => string {
  const { rules } = useMessages();
  return (span) => {
    const [, years, months, weeks, days] = PARTS.exec(span ?? '') ?? [];
    return rules.span({
      years: Number(years ?? 0),
      months: Number(months ?? 0),
      weeks: Number(weeks ?? 0),
      days: Number(days ?? 0),
    });
  };
}
