import type { StageDetail } from '@rootclock/domain';
import { useSession } from '../../../lib/api/index.ts';
import { useFormat } from '../../../lib/format/index.ts';
import { useLanguage, useMessages } from '../../../messages/index.ts';

export type StageConditions = Pick<
  StageDetail,
  'temperatureLowC' | 'temperatureHighC' | 'light' | 'depthMm' | 'medium' | 'season' | 'rests'
> & { containerName?: string | null };

const isLight = (light: string): light is 'dark' | 'surface-light' | 'shade' | 'full-light' =>
  ['dark', 'surface-light', 'shade', 'full-light'].includes(light);

/** The conditions of a stage in words, by the nursery's units. */
export function useConditions() {
  const { protocols } = useMessages().propagation;
  const { dates, measures } = useFormat();
  const { nursery } = useSession();
  const language = useLanguage();
  const isUs = nursery.units === 'us';
  const degree = (celsius: number) =>
    new Intl.NumberFormat(language, { maximumFractionDigits: isUs ? 0 : 1 }).format(
      isUs ? celsius * 1.8 + 32 : celsius,
    );
  const sign = isUs ? '°F' : '°C';
  const words = {
    temperature: ({ temperatureLowC: low, temperatureHighC: high }: StageConditions): string => {
      if (low === null && high === null) return '';
      return low === null || high === null || low === high
        ? `${degree(low ?? high ?? 0)} ${sign}`
        : `${degree(low)}–${degree(high)} ${sign}`;
    },
    light: ({ light }: StageConditions): string => (isLight(light) ? protocols.lights[light] : ''),
    depth: ({ depthMm }: StageConditions): string =>
      depthMm === null ? '' : depthMm === 0 ? protocols.page.onSurface : protocols.page.deep(measures.length(depthMm)),
    season: ({ season }: StageConditions): string =>
      season === null ? '' : protocols.page.season(dates.yearly(season.fromMd), dates.yearly(season.toMd)),
  };
  return {
    ...words,
    all: (stage: StageConditions): string[] =>
      [
        words.season(stage),
        stage.rests ? protocols.page.rests : '',
        words.temperature(stage),
        words.light(stage),
        words.depth(stage),
        stage.medium,
        stage.containerName ?? '',
      ].filter(Boolean),
  };
}
