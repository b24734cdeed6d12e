/** Why a rule offers an alternative, in sentences. */
import type { orders as contracts } from '@rootclock/contracts';
import type { HabitTrait } from '@rootclock/domain';
import { useLanguage, useMessages } from '../../../messages/index.ts';
import { useMonthNames } from '../../plants/facts/fact-value.tsx';

export function useOfferWords() {
  const { offer: say } = useMessages().substitutes;
  const months = useMonthNames();
  const list = new Intl.ListFormat(useLanguage(), { type: 'conjunction' });
  const because = ({ kind, shared, scientificName }: contracts.OfferedAlternative): string => {
    if (kind === 'another-size') return say.because['another-size']();
    if (kind === 'same-genus' || shared === null) return say.because['same-genus'](scientificName.split(' ')[0] ?? '');
    return say.habit(
      say.heights[shared.heightClass],
      list.format(shared.lights.map((light) => say.lights[light])),
      list.format(shared.bloomMonths.map((month) => months[month - 1] ?? '')),
    );
  };
  return {
    reason: (offer: contracts.OfferedAlternative, region: string | null): string => {
      if (region === null || offer.native === null || offer.kind === 'another-size') return because(offer);
      return `${because(offer)} ${offer.native ? say.native(region) : say.notNative(region)}`;
    },
    traits: (traits: readonly HabitTrait[]): string => list.format(traits.map((trait) => say.traits[trait])),
  };
}
