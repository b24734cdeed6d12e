/** The conditions of a line as they stand in a body, in the form's own values and in words. */
import type { FieldWords } from '../../../lib/form/index.ts';
import { newCommandId } from '../../../lib/ids.ts';
import { useMessages } from '../../../messages/index.ts';
import type { conditionsBody, Conditions } from './condition-fields.tsx';

type Sent = ReturnType<typeof conditionsBody>;
type Called = Readonly<Record<string, string>>;

export function conditionsShown(body: Record<string, unknown>, called: Called): Conditions {
  const { bedId, seedZone, wildType, untreated, alternatives } = body as Sent;
  return {
    bedId: bedId ?? '',
    seedZone: seedZone ?? '',
    wildType,
    untreated,
    alternatives: alternatives.map(({ plantId, containerId, penalty }) => ({
      key: newCommandId(),
      plant: { id: plantId, scientificName: called[plantId] ?? '' },
      container: { id: containerId, name: called[containerId] ?? '' },
      penalty,
    })),
  };
}

export function useConditionWords(): Record<string, FieldWords> {
  const { line } = useMessages().promises;
  const sayAll = (alternatives: unknown, called: Called) =>
    (alternatives as Sent['alternatives'])
      .map(({ plantId, containerId, penalty }) => `${called[plantId] ?? ''}, ${called[containerId] ?? ''} (${penalty})`)
      .join('\n');
  return { alternatives: { label: line.alternatives, value: sayAll } };
}
