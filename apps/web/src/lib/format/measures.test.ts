import { describe, expect, it } from 'vitest';
import { measuresIn } from './measures.ts';

describe('measures', () => {
  it('shows a one-litre pot in the units of the nursery', () => {
    expect([measuresIn('metric', 'en').volume(1000), measuresIn('us', 'en').volume(1000)]).toEqual(['1 L', '1.06 qt']);
  });

  it('shows a US gallon as one gallon', () => {
    expect(measuresIn('us', 'en').volume(3785.411784)).toBe('1 gal');
  });

  it('shows a plug cell in the small unit', () => {
    expect([measuresIn('metric', 'en').volume(38), measuresIn('us', 'en').volume(38)]).toEqual(['38 ml', '1.28 fl oz']);
  });

  it('shows twelve inches as inches and metres where they are long', () => {
    expect([
      measuresIn('us', 'en').length(304.8),
      measuresIn('metric', 'en').length(1850),
      measuresIn('metric', 'en').length(355),
    ]).toEqual(['12 in', '1.85 m', '35.5 cm']);
  });

  it('shows areas and weights in both', () => {
    expect([measuresIn('us', 'en').area(10), measuresIn('metric', 'en').area(10)]).toEqual(['108 sq ft', '10 m²']);
    expect([measuresIn('us', 'en').weight(453.59237), measuresIn('metric', 'en').weight(1250)]).toEqual([
      '1 lb',
      '1.25 kg',
    ]);
  });

  it('shows seed to the milligram, in US units beside the ounces', () => {
    expect([measuresIn('metric', 'en').seedWeight(12.4), measuresIn('metric', 'en').seedWeight(0.003)]).toEqual([
      '12.4\u00a0g',
      '0.003\u00a0g',
    ]);
    expect([measuresIn('us', 'en').seedWeight(12.4), measuresIn('us', 'en').seedWeight(0.12)]).toEqual([
      '0.437\u00a0oz (12.4\u00a0g)',
      '0.00423\u00a0oz (0.12\u00a0g)',
    ]);
  });

  it('writes the decimal mark of the language', () => {
    expect(measuresIn('metric', 'es').length(355)).toBe('35,5 cm');
  });
});
