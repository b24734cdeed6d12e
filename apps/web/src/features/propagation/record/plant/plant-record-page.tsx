/** All that was learned of one plant: what comes through, how long it takes, what is lost when, and how long it lives in a pot. */
import { useQuery } from '@tanstack/react-query';
import { getRouteApi } from '@tanstack/react-router';
import { trpc } from '../../../../lib/api/index.ts';
import { paths } from '../../../../lib/paths.ts';
import { Read } from '../../../../lib/read/index.ts';
import { useMessages } from '../../../../messages/index.ts';
import { ButtonLink } from '../../../../ui/action/index.ts';
import { EmptyState } from '../../../../ui/feedback/index.ts';
import { PageHeader, Section } from '../../../../ui/layout/index.ts';
import { PropagationTabs } from '../../propagation-tabs.tsx';
import type { PlantRecord } from '../record-data.ts';
import { LossesSection } from './losses-section.tsx';
import { StagesTable } from './stages-table.tsx';
import { SurvivalSection } from './survival-section.tsx';
import { TimesSection } from './times-section.tsx';
import '../record.css';

const route = getRouteApi('/signed-in/propagation/record/$plantId');

export function PlantRecordPage() {
  const { plantId } = route.useParams();
  return (
    <div className="stack">
      <Read query={useQuery(trpc.propagation.readPlantRecord.queryOptions({ plantId }))} lines={8}>
        {(record) => <Record record={record} />}
      </Read>
    </div>
  );
}

function Record({ record }: { record: PlantRecord }) {
  const { record: say } = useMessages();
  const { plant } = record;
  return (
    <>
      <PageHeader
        back={{ to: paths.record(), label: say.title }}
        kicker={plant.code}
        title={<i lang="la">{plant.scientificName}</i>}
        titleText={`${say.title}: ${plant.scientificName}`}
        facts={plant.vernacularName}
        actions={<ButtonLink to={paths.plant(plant.plantId)}>{say.plant}</ButtonLink>}
      />
      <PropagationTabs />
      <Section title={say.shares}>
        {record.shares.length === 0 ? (
          <EmptyState
            kind="nothing-yet"
            title={say.hereTitle}
            actions={<ButtonLink to={paths.protocols()}>{say.toProtocol}</ButtonLink>}
          >
            {say.hereText}
          </EmptyState>
        ) : (
          <div className="record-stages">
            <p className="record-note">{say.legend}</p>
            {record.shares.map((shares) => (
              <StagesTable key={`${shares.method}/${shares.label}`} shares={shares} settings={record.settings} />
            ))}
          </div>
        )}
      </Section>
      <TimesSection times={record.times} />
      <LossesSection losses={record.losses} living={record.living} />
      <SurvivalSection survivals={record.survivals} />
    </>
  );
}
