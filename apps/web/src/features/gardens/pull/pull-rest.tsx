/** What belongs to the order and cannot be fetched: pulled already, not potted yet, or short. */
import type { gardens as contracts } from '@rootclock/contracts';
import { useMessages } from '../../../messages/index.ts';
import { Section } from '../../../ui/layout/index.ts';

export function StagedList({ list }: { list: contracts.PullList }) {
  const { gardens, orders } = useMessages();
  const words = gardens.pull;
  if (list.staged.length === 0) return null;
  return (
    <Section title={words.stagedTitle} aside={orders.unitsOf(list.staged.reduce((sum, { units }) => sum + units, 0))}>
      <ul className="plain-list">
        {list.staged.map((row) => (
          <li key={`${row.lineId}/${row.lotId}`}>
            {words.staged(row.scientificName, row.containerCode, row.units, row.lotCode)}
          </li>
        ))}
      </ul>
    </Section>
  );
}

export function NotOnTheList({ list }: { list: contracts.PullList }) {
  const { gardens } = useMessages();
  const words = gardens.pull;
  return (
    <>
      {list.short.length > 0 && (
        <Section title={words.shortTitle}>
          <ul className="plain-list">
            {list.short.map((row) => (
              <li key={row.lineId}>{words.short(row.scientificName, row.containerCode, row.units)}</li>
            ))}
          </ul>
        </Section>
      )}
      {list.notPotted.length > 0 && (
        <Section title={words.notPottedTitle}>
          <ul className="plain-list">
            {list.notPotted.map((row) => (
              <li key={`${row.lineId}/${row.batchCode}`}>
                {words.notPotted(row.scientificName, row.units, row.batchCode, row.readyOn)}
              </li>
            ))}
          </ul>
        </Section>
      )}
    </>
  );
}
