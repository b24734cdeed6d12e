/** What the lot is: plant, source, container, and who is kin to it. */
import { useFormat } from '../../../../lib/format/index.ts';
import { paths } from '../../../../lib/paths.ts';
import { useMessages } from '../../../../messages/index.ts';
import { TextLink } from '../../../../ui/action/index.ts';
import { DefinitionList, Section } from '../../../../ui/layout/index.ts';
import type { Lot } from '../lot-data.ts';

export function FactsPanel({ lot }: { lot: Lot }) {
  const { ui, lots } = useMessages();
  const { page, words } = lots;
  const { dates, measures } = useFormat();
  const rough = (on: string, precision: string) => dates.rough(on, precision as 'day', (season) => ui[season]);
  const { source, container, plant } = lot;
  return (
    <Section title={page.facts}>
      <DefinitionList
        facts={[
          {
            term: page.plant,
            value: (
              <TextLink to={paths.plant(plant.id)}>
                <i lang="la">{plant.scientificName}</i>
                {plant.vernacularName ? ` · ${plant.vernacularName}` : ''}
              </TextLink>
            ),
          },
          {
            term: page.source,
            value: (
              <>
                <TextLink to={paths.source(source.id)}>{source.code}</TextLink>,{' '}
                {words.sourceKinds[source.kind] ?? source.kind}
              </>
            ),
          },
          { term: page.provenance, value: source.provenance },
          { term: page.seedZone, value: source.seedZone },
          {
            term: page.gathered,
            value: source.gatheredOn && rough(source.gatheredOn, source.gatheredPrecision ?? 'day'),
          },
          { term: page.vendor, value: source.vendor },
          { term: page.pesticides, value: source.pesticideStatement },
          {
            term: page.pot,
            value: container.volumeMl ? `${container.name}, ${measures.volume(container.volumeMl)}` : container.name,
          },
          { term: page.potted, value: rough(lot.pottedOn, lot.pottedPrecision) },
          { term: page.note, value: lot.note },
        ]}
      />
      {plant.larvalHost && <p>{page.hostCare}</p>}
    </Section>
  );
}

export function FamilyPanel({ lot }: { lot: Lot }) {
  const { page } = useMessages().lots;
  if (lot.parents.length + lot.children.length + lot.cuttingsOf.length === 0) return null;
  const links = (kin: Lot['parents'], withUnits: boolean) =>
    kin.length > 0 && (
      <ul className="lot-list">
        {kin.map(({ kind, id, code, container, units }) => (
          <li key={id}>
            <TextLink to={kind === 'lot' ? paths.lot(id) : paths.batch(id)}>{code}</TextLink>
            {container && `, ${container}`}
            {withUnits && `, ${page.left(units)}`}
          </li>
        ))}
      </ul>
    );
  return (
    <Section title={page.family}>
      <DefinitionList
        facts={[
          { term: page.parents, value: links(lot.parents, false) || null },
          { term: page.children, value: links(lot.children, true) || null },
          {
            term: page.cuttings,
            value: lot.cuttingsOf.length > 0 && (
              <ul className="lot-list">
                {lot.cuttingsOf.map(({ id, code }) => (
                  <li key={id}>
                    <TextLink to={paths.source(id)}>{code}</TextLink>
                  </li>
                ))}
              </ul>
            ),
          },
        ].map((fact) => ({ ...fact, value: fact.value || null }))}
      />
    </Section>
  );
}

export function TreatmentsPanel({ lot }: { lot: Lot }) {
  const { page } = useMessages().lots;
  const { dates } = useFormat();
  return (
    <Section title={page.treatments}>
      {lot.treatments.length === 0 ? (
        <p>{page.untreated}</p>
      ) : (
        <ul className="lot-list">
          {lot.treatments.map((treatment) => (
            <li key={treatment.entryId}>
              <span className="figure">{dates.short(treatment.treatedOn)}</span>{' '}
              {[
                treatment.product,
                treatment.rate,
                treatment.registrationNo && page.registration(treatment.registrationNo),
                treatment.target,
                treatment.applicator,
                treatment.reentryAt && page.reentry(dates.instant(treatment.reentryAt)),
                treatment.on.id !== lot.id && page.treatedOn(treatment.on.code),
              ]
                .filter(Boolean)
                .join(', ')}
            </li>
          ))}
        </ul>
      )}
    </Section>
  );
}
