/** How a printed page says degrees, depths, shares and days of the year. */
export interface PaperMeasures {
  degrees(low: number | null, high: number | null): string;
  depth(mm: number): string;
  share(share: number): string;
  monthDay(md: string): string;
}

const MM_PER_INCH = 25.4;

export function measuresOf(units: 'metric' | 'us', language: string): PaperMeasures {
  const number = (value: number, digits: number) =>
    new Intl.NumberFormat(language, { maximumFractionDigits: digits }).format(value);
  const degree = (celsius: number) => (units === 'us' ? number(celsius * 1.8 + 32, 0) : number(celsius, 1));
  const sign = units === 'us' ? '°F' : '°C';
  const percent = new Intl.NumberFormat(language, { style: 'percent', maximumFractionDigits: 1 });
  // In a leap year, so that 29 February can be said.
  const day = new Intl.DateTimeFormat(language, { day: 'numeric', month: 'short', timeZone: 'UTC' });
  return {
    degrees: (low, high) => {
      if (low === null && high === null) return '';
      if (low === null || high === null || low === high) return `${degree(low ?? high ?? 0)} ${sign}`;
      return `${degree(low)}–${degree(high)} ${sign}`;
    },
    depth: (mm) => (units === 'us' ? `${number(mm / MM_PER_INCH, 2)} in` : `${number(mm, 0)} mm`),
    share: (share) => percent.format(share),
    monthDay: (md) => day.format(new Date(`2000-${md}T00:00:00Z`)),
  };
}
