import { isCalendarDate } from '@rootclock/domain';
import { keepPreviousData, useQuery } from '@tanstack/react-query';
import { trpc } from '../../../lib/api/index.ts';
import type { ForecastSuggestion } from '../yields/suggestion.ts';
import { type StartValues, unitsOf } from './start-values.ts';

/**
 * What the record suggests of the start as it is typed, and the values with it. While nobody typed a yield of his own the form shows what is suggested,
 * and sends what it shows; the server writes nothing by itself.
 */
export function useSuggestion(values: StartValues): { suggestion: ForecastSuggestion | null; shown: StartValues } {
  const units = unitsOf(values);
  const isAsked = values.protocolVersionId !== '' && isCalendarDate(values.happenedOn);
  const seedsSown =
    values.seedsSown !== null && Number.isInteger(values.seedsSown) && values.seedsSown > 0 ? values.seedsSown : null;
  const { data } = useQuery({
    ...trpc.propagation.suggestForecast.queryOptions({
      protocolVersionId: values.protocolVersionId,
      unit: values.unit,
      units: units ?? 1,
      seedsSown,
      startedOn: values.happenedOn,
      stagePosition: Number(values.stagePosition || 0),
      containerId: values.containerId?.id ?? null,
      targetContainerId: values.targetContainerId?.id ?? null,
    }),
    enabled: isAsked,
    placeholderData: keepPreviousData,
  });
  const suggestion = isAsked ? (data ?? null) : null;
  if (!suggestion || !values.fromRecord) return { suggestion, shown: values };
  const expected = units === null ? null : suggestion.yield;
  return {
    suggestion,
    shown: {
      ...values,
      cautiousUnits: expected?.cautiousUnits ?? null,
      usualUnits: expected?.usualUnits ?? null,
      readyOn: suggestion.readyOn ?? '',
    },
  };
}
