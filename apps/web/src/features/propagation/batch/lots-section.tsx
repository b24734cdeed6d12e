/** What the batch has become and for whom it is kept: batches drawn from it, lots potted from it, promises on it, treatments it had. */
import { FIELD } from '@rootclock/domain';
import { useSession } from '../../../lib/api/index.ts';
import { useFormat } from '../../../lib/format/index.ts';
import { paths, startBatchLink } from '../../../lib/paths.ts';
import { useMessages } from '../../../messages/index.ts';
import { ButtonLink, TextLink } from '../../../ui/action/index.ts';
import { Section } from '../../../ui/layout/index.ts';
import type { BatchPageData } from '../batch-page-data.ts';

export function LotsSection({ batch }: { batch: BatchPageData }) {
  const { page: say } = useMessages().propagation;
  const { dates } = useFormat();
  return (
    <Section title={say.lotsTitle}>
      {batch.lots.length === 0 ? (
        <p>{say.lotsEmpty}</p>
      ) : (
        <ul className="batch-lines">
          {batch.lots.map((lot) => (
            <li key={lot.lotId}>
              <TextLink to={paths.lot(lot.lotId)}>{lot.code}</TextLink>, {lot.containerName},{' '}
              {dates.short(lot.pottedOn)}: {say.lotLine(lot.pottedUnits, lot.standingUnits)}
            </li>
          ))}
        </ul>
      )}
    </Section>
  );
}

export function DrawnSection({ batch }: { batch: BatchPageData }) {
  const { propagation } = useMessages();
  const { page: say } = propagation;
  const { dates } = useFormat();
  const { mayBe } = useSession();
  const mayDraw = mayBe(FIELD) && batch.closedOn === null;
  if (batch.drawn.length === 0 && !mayDraw) return null;
  const again = mayDraw && (
    <ButtonLink
      {...startBatchLink({
        plantId: batch.plantId,
        sourceId: batch.source.sourceId,
        packsId: batch.batchId,
        protocolVersionId: batch.protocol?.versionId,
      })}
    >
      {say.drawMore}
    </ButtonLink>
  );
  return (
    <Section title={say.drawnTitle} actions={again}>
      <ul className="batch-lines">
        {batch.drawn.map((drawn) => (
          <li key={drawn.batchId}>
            <TextLink to={paths.batch(drawn.batchId)}>{drawn.code}</TextLink>, {dates.short(drawn.startedOn)}:{' '}
            {say.drawnLine(drawn.packs, propagation.units(drawn.startedUnits, drawn.unit))}
          </li>
        ))}
      </ul>
    </Section>
  );
}

export function ReservedSection({ batch }: { batch: BatchPageData }) {
  const { propagation } = useMessages();
  const { page: say } = propagation;
  const { dates } = useFormat();
  return (
    <Section title={say.reservedTitle}>
      {batch.reservations.length === 0 ? (
        <p>{say.reservedEmpty}</p>
      ) : (
        <ul className="batch-lines">
          {batch.reservations.map((row, index) => (
            <li key={`${row.orderId}-${index}`}>
              <TextLink to={paths.order(row.orderId)}>{row.orderCode}</TextLink>, {row.clientName},{' '}
              {dates.short(row.dueOn)}: {propagation.plants(row.units)}
            </li>
          ))}
        </ul>
      )}
    </Section>
  );
}

export function TreatedSection({ batch }: { batch: BatchPageData }) {
  const { page: say } = useMessages().propagation;
  const { dates } = useFormat();
  return (
    <Section title={say.treatedTitle}>
      {batch.treatments.length === 0 ? (
        <p>{say.treatedEmpty}</p>
      ) : (
        <ul className="batch-lines">
          {batch.treatments.map((treatment) => (
            <li key={treatment.treatmentId}>
              {dates.instant(String(treatment.treatedAt))}: {say.treatedBy(treatment.product, treatment.applicator)}
            </li>
          ))}
        </ul>
      )}
    </Section>
  );
}
