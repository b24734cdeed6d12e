/** All that is known of one plant, each value with its word: cautions and handling first, since work can hurt plants and people. */
import { useQuery } from '@tanstack/react-query';
import { useParams } from '@tanstack/react-router';
import type { plants as contracts } from '@rootclock/contracts';
import { GROWERS } from '@rootclock/domain';
import { trpc, useSession } from '../../../lib/api/index.ts';
import { paths } from '../../../lib/paths.ts';
import { Read } from '../../../lib/read/index.ts';
import { useMessages } from '../../../messages/index.ts';
import { ButtonLink } from '../../../ui/action/index.ts';
import { Callout } from '../../../ui/feedback/index.ts';
import { PageHeader } from '../../../ui/layout/index.ts';
import { HeadPhoto } from '../../files/photo-tile.tsx';
import { PhotosSection } from '../../files/photos-section.tsx';
import { Facts } from '../facts/facts.tsx';
import { PlantNames } from '../plant-names.tsx';
import { PlantName } from '../plant-name.tsx';
import { Cautions } from './cautions.tsx';
import { Handling } from './handling.tsx';
import { Protocols } from './protocols.tsx';
import { RetireButton } from './retire-button.tsx';
import { RulesReaching } from './rules-reaching.tsx';
import { Standing } from './standing.tsx';
import { YearMonths } from './year-months.tsx';
import '../plants.css';

export function PlantPage() {
  const { plantId } = useParams({ strict: false });
  const query = useQuery(trpc.plants.readPlant.queryOptions({ plantId: plantId ?? '' }));
  return <Read query={query}>{(plant) => <Plant plant={plant} />}</Read>;
}

function Plant({ plant }: { plant: contracts.PlantPage }) {
  const { page: say } = useMessages().plants;
  const { mayBe } = useSession();
  const common = plant.names.filter(({ kind }) => kind === 'common').map(({ name }) => name);
  const others = common.filter((name) => name !== plant.vernacularName);
  const calledFirst = [plant.vernacularName, ...others].filter(Boolean);
  return (
    <>
      <PageHeader
        back={{ to: paths.plants(), label: say.back }}
        kicker={[plant.code, plant.family].filter(Boolean).join(' · ')}
        title={<PlantName name={plant.scientificName} author={plant.scientificNameAuthorship} />}
        titleText={plant.scientificName}
        sign={<HeadPhoto subject={{ kind: 'plant', id: plant.id }} />}
        facts={calledFirst.join(', ')}
        actions={
          mayBe(GROWERS) && (
            <>
              <ButtonLink to={paths.editPlant(plant.id)}>{say.edit}</ButtonLink>
              <RetireButton plant={plant} />
            </>
          )
        }
      />
      {plant.isRetired && <Callout tone="note">{say.retiredNote}</Callout>}
      <Cautions plant={plant} />
      <Handling plant={plant} />
      <Standing plant={plant} />
      <PhotosSection subject={{ kind: 'plant', id: plant.id }} />
      <Protocols plantId={plant.id} isRetired={plant.isRetired} />
      <YearMonths plant={plant} />
      <PlantNames plant={plant} />
      <Facts plant={plant} />
      <RulesReaching plant={plant} />
    </>
  );
}
