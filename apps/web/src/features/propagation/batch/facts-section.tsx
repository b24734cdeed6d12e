/** What the batch is: where it came from, what stands, what binds it and what may be promised. */
import type { Standing } from '@rootclock/domain';
import { useFormat } from '../../../lib/format/index.ts';
import { paths } from '../../../lib/paths.ts';
import { useMessages } from '../../../messages/index.ts';
import { TextLink } from '../../../ui/action/index.ts';
import { DefinitionList, Section } from '../../../ui/layout/index.ts';
import { StandingMark } from '../../../ui/sign/index.ts';
import type { BatchPageData } from '../batch-page-data.ts';

export function FactsSection({ batch }: { batch: BatchPageData }) {
  const { propagation } = useMessages();
  const { page: say } = propagation;
  const { dates, measures, numbers } = useFormat();
  const { source, rule } = batch;
  const reserved = batch.reservations.reduce((sum, row) => sum + row.units, 0);
  return (
    <Section title={say.factsTitle}>
      <DefinitionList
        facts={[
          {
            term: say.standing,
            value: [
              propagation.units(batch.standingUnits, batch.unit),
              batch.places
                .map((place) =>
                  batch.places.length > 1 ? say.placeUnits(place.code, numbers.count(place.units)) : place.code,
                )
                .join(', '),
            ]
              .filter(Boolean)
              .join(' · '),
          },
          batch.aliveUnits !== null &&
            batch.closedOn === null && { term: say.alive, value: numbers.count(batch.aliveUnits) },
          {
            term: say.startedWith,
            value: `${propagation.units(batch.startedUnits, batch.unit)}, ${propagation.methods[batch.method]}, ${dates.long(batch.startedOn)}`,
          },
          batch.containerName !== null && { term: say.container, value: batch.containerName },
          batch.seedsSown !== null && { term: say.seeds, value: numbers.count(batch.seedsSown) },
          batch.seedsGrams !== null && { term: say.seedGrams, value: measures.seedWeight(batch.seedsGrams) },
          batch.parent !== null && {
            term: say.parent,
            value: <TextLink to={paths.batch(batch.parent.batchId)}>{batch.parent.code}</TextLink>,
          },
          {
            term: say.source,
            value: (
              <>
                <TextLink to={paths.source(source.sourceId)}>{source.code}</TextLink>
                {[source.provenance, source.vendor, source.seedZone]
                  .filter(Boolean)
                  .map((part) => `, ${part}`)
                  .join('')}
              </>
            ),
          },
          source.motherLotId !== null && {
            term: say.motherLot,
            value: <TextLink to={paths.lot(source.motherLotId)}>{source.motherLotCode}</TextLink>,
          },
          batch.firstAlive !== null && {
            term: say.firstAlive,
            value: `${dates.long(batch.firstAlive.on)}${batch.firstAlive.assumed ? ` (${say.assumed})` : ''}`,
          },
          batch.plantByOn !== null && {
            term: say.plantBy,
            value: `${dates.long(batch.plantByOn)}, ${dates.fromToday(batch.plantByOn)}`,
          },
          batch.limitOn !== null &&
            batch.limitOn !== batch.plantByOn && { term: say.limit, value: dates.long(batch.limitOn) },
          rule !== null && {
            term: say.rule,
            value: [rule.span ? spanWords(rule.span) : null, say.ruleBasis[rule.basis] ?? rule.basis, rule.note]
              .filter(Boolean)
              .join(', '),
            mark: <StandingMark standing={rule.standing as Standing} source={rule.source} />,
          },
          batch.nextOpensOn !== null && { term: say.nextWindow, value: dates.long(batch.nextOpensOn) },
          reserved > 0 && { term: say.held, value: propagation.plants(reserved) },
        ]}
      />
      {batch.closedOn === null && batch.confinedOn === null && (
        <p>{batch.needsFirstAlive ? say.noClock : say.noClockFlat}</p>
      )}
      {batch.note && <p>{batch.note}</p>}
    </Section>
  );

  function spanWords(span: string): string {
    const [, amount = '', unit = ''] = /^P(\d+)([YMWD])$/.exec(span) ?? [];
    const words = { Y: say.years, M: say.months, W: say.weeks, D: say.days };
    return unit in words ? words[unit as keyof typeof words](Number(amount)) : span;
  }
}
