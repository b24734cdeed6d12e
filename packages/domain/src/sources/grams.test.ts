import { expect, test } from 'vitest';
import { bookableGrams, toMilligram } from './grams.ts';

test('grams are read to the milligram', () => expect(toMilligram(12.40049)).toBe(12.4));
test('a sum of milligrams has no rest of binary fractions', () => expect(toMilligram(0.1 + 0.2)).toBe(0.3));
test('a few fine seeds are booked as one milligram', () => expect(bookableGrams(0.00002)).toBe(0.001));
test('no weight is not booked', () => expect(() => bookableGrams(0)).toThrow('grams'));
