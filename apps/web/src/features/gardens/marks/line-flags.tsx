/** LineFlags: what is ambiguous, not native, or near livestock, each by the scientific name, so that nobody plants the wrong thing. */
import type { LineFlag } from '@rootclock/domain';
import { useMessages } from '../../../messages/index.ts';
import { Callout } from '../../../ui/feedback/index.ts';

export interface FlaggedPlant {
  scientificName: string;
  vernacularName: string;
  flags: LineFlag[];
  namesakes: { plantId: string; scientificName: string }[];
}

export function LineFlags({ line, region }: { line: FlaggedPlant; region: string | null }) {
  const { gardens } = useMessages();
  const { scientificName: plant, vernacularName: vernacular } = line;
  const sentences: Record<LineFlag, () => string> = {
    'ambiguous-name': () => gardens.ambiguousName(plant, vernacular, line.namesakes.map(({ scientificName }) => scientificName)),
    'not-native': () => gardens.notNative(plant, region),
    'livestock-near': () => gardens.livestockNear(plant),
  };
  return line.flags.map((flag) => (
    <Callout key={flag} tone={flag === 'ambiguous-name' ? 'note' : 'caution'} title={gardens.flags[flag]}>
      {sentences[flag]()}
    </Callout>
  ));
}
