/** Weights of seed in the words of one language: grams to the milligram, which is what balances say and stores keep. */
export function gramsOf(language: string): (grams: number) => string {
  const figures = new Intl.NumberFormat(language, { maximumFractionDigits: 3 });
  return (grams) => `${figures.format(grams)} g`;
}

export function sharesOf(language: string): (share: number) => string {
  const figures = new Intl.NumberFormat(language, { style: 'percent', maximumFractionDigits: 1 });
  return (share) => figures.format(share);
}
