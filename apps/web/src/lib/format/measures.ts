/**
 * Lengths, volumes, areas and weights: stored in mm, ml, m² and g, shown metric or US by the nursery's choice. Rounded as a grower
 * would say it; the stored figure is never changed by showing it.
 */
export type Units = 'metric' | 'us';

const MM_PER_INCH = 25.4;
const ML_PER_FLUID_OUNCE = 29.5735295625;
const ML_PER_QUART = 946.352946;
const ML_PER_GALLON = 3785.411784;
const SQUARE_FEET_PER_M2 = 10.76391041671;
const G_PER_OUNCE = 28.349523125;
const G_PER_POUND = 453.59237;

/** Three significant figures and never more than two behind the mark: 0.95, 3.79, 37.9, 379. */
function figure(value: number, language: string): string {
  const digits = Math.abs(value) >= 100 ? 0 : Math.abs(value) >= 10 ? 1 : 2;
  return new Intl.NumberFormat(language, { maximumFractionDigits: digits }).format(value);
}

const degrees = (value: number, unit: string, language: string): string =>
  `${new Intl.NumberFormat(language, { maximumFractionDigits: 0 }).format(value)} ${unit}`;
const withUnit = (value: number, unit: string, language: string): string => `${figure(value, language)} ${unit}`;

export interface Measures {
  length(mm: number): string;
  volume(ml: number): string;
  area(m2: number): string;
  weight(g: number): string;
  /** Whole degrees: nobody sets a cold store finer. */
  temperature(celsius: number): string;
  /** Never broken between figure and unit. To the milligram, since a few grams of seed fill many trays. In US units the grams stand beside, because seed balances read grams. */
  seedWeight(g: number): string;
}

const grams = (g: number, language: string): string =>
  `${new Intl.NumberFormat(language, { maximumFractionDigits: 3 }).format(g)}\u00a0g`;

function ounces(g: number, language: string): string {
  const figures = new Intl.NumberFormat(language, { maximumSignificantDigits: 3 });
  return g >= G_PER_POUND ? `${figures.format(g / G_PER_POUND)}\u00a0lb` : `${figures.format(g / G_PER_OUNCE)}\u00a0oz`;
}

export function measuresIn(units: Units, language: string): Measures {
  if (units === 'us') {
    return {
      length: (mm) =>
        mm >= 12 * 12 * MM_PER_INCH
          ? withUnit(mm / MM_PER_INCH / 12, 'ft', language)
          : withUnit(mm / MM_PER_INCH, 'in', language),
      volume: (ml) => {
        // Trade gallons are nominal: a pot sold as one gallon holds less, so nothing is rounded up to a name here.
        if (ml >= ML_PER_GALLON) return withUnit(ml / ML_PER_GALLON, 'gal', language);
        return ml >= ML_PER_QUART
          ? withUnit(ml / ML_PER_QUART, 'qt', language)
          : withUnit(ml / ML_PER_FLUID_OUNCE, 'fl oz', language);
      },
      area: (m2) => withUnit(m2 * SQUARE_FEET_PER_M2, 'sq ft', language),
      temperature: (celsius) => degrees(celsius * 1.8 + 32, '°F', language),
      weight: (g) =>
        g >= G_PER_POUND ? withUnit(g / G_PER_POUND, 'lb', language) : withUnit(g / G_PER_OUNCE, 'oz', language),
      seedWeight: (g) => `${ounces(g, language)} (${grams(g, language)})`,
    };
  }
  return {
    length: (mm) => {
      if (mm >= 1000) return withUnit(mm / 1000, 'm', language);
      return mm >= 100 ? withUnit(mm / 10, 'cm', language) : withUnit(mm, 'mm', language);
    },
    volume: (ml) => (ml >= 1000 ? withUnit(ml / 1000, 'L', language) : withUnit(ml, 'ml', language)),
    area: (m2) => withUnit(m2, 'm²', language),
    temperature: (celsius) => degrees(celsius, '°C', language),
    weight: (g) => (g >= 1000 ? withUnit(g / 1000, 'kg', language) : withUnit(g, 'g', language)),
    seedWeight: (g) => grams(g, language),
  };
}
