/** Counts, shares and money in the reader's language. */
export interface Numbers {
  count(value: number): string;
  /** A figure with at most two decimals. */
  decimal(value: number): string;
  /** 0–1 as per cent; one decimal below ten per cent. */
  share(value: number): string;
  /** 0–1 as per cent with one decimal where there is one, for parts that people add up to the whole. */
  part(value: number): string;
  /** How many times as much, to a hundredth. */
  times(value: number): string;
  /** Minor units of a currency. */
  money(minor: number, currency: string): string;
}

export function numbersIn(language: string): Numbers {
  const counts = new Intl.NumberFormat(language, { maximumFractionDigits: 0 });
  const figures = new Intl.NumberFormat(language, { maximumFractionDigits: 2 });
  const decimals = new Intl.NumberFormat(language, { style: 'percent', maximumFractionDigits: 1 });
  const hundredths = new Intl.NumberFormat(language, { maximumFractionDigits: 2 });
  const whole = new Intl.NumberFormat(language, { style: 'percent', maximumFractionDigits: 0 });
  return {
    count: (value) => counts.format(value),
    decimal: (value) => figures.format(value),
    share: (value) => (Math.abs(value) < 0.1 ? decimals : whole).format(value),
    part: (value) => decimals.format(value),
    times: (value) => hundredths.format(value),
    money: (minor, currency) => {
      const format = new Intl.NumberFormat(language, { style: 'currency', currency });
      return format.format(minor / 10 ** (format.resolvedOptions().maximumFractionDigits ?? 2));
    },
  };
}
