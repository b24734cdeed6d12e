/** A measure as it is shown and typed, beside the stored one it came from: what nobody touched goes back as it was. */
export interface Shown {
  shown: number | null;
  stored: number | null;
}

const MM_PER_INCH = 25.4;
const rounded = (value: number, digits: number) => Number(value.toFixed(digits));

const degreesOf = (celsius: number, isUs: boolean) => (isUs ? rounded(celsius * 1.8 + 32, 1) : celsius);
const depthOf = (mm: number, isUs: boolean) => (isUs ? rounded(mm / MM_PER_INCH, 2) : mm);

export const shownDegrees = (stored: number | null, isUs: boolean): Shown => ({
  stored,
  shown: stored === null ? null : degreesOf(stored, isUs),
});
export const shownDepth = (stored: number | null, isUs: boolean): Shown => ({
  stored,
  shown: stored === null ? null : depthOf(stored, isUs),
});

/** In degrees Celsius, to a tenth. NaN stays NaN, so that the contract says what is wrong. */
export function storedDegrees({ shown, stored }: Shown, isUs: boolean): number | null {
  if (shown === null) return null;
  if (stored !== null && degreesOf(stored, isUs) === shown) return stored;
  return isUs ? rounded((shown - 32) / 1.8, 1) : shown;
}

/** In whole millimetres where they were typed in inches. */
export function storedDepth({ shown, stored }: Shown, isUs: boolean): number | null {
  if (shown === null) return null;
  if (stored !== null && depthOf(stored, isUs) === shown) return stored;
  return isUs ? Math.round(shown * MM_PER_INCH) : shown;
}
