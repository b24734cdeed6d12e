/** Changes a plant. */
import { useQuery } from '@tanstack/react-query';
import { useNavigate, useParams } from '@tanstack/react-router';
import { plants as contracts } from '@rootclock/contracts';
import { trpc } from '../../../lib/api/index.ts';
import { Submit, useCommandForm } from '../../../lib/form/index.ts';
import { useCommand } from '../../../lib/outbox/index.ts';
import { paths } from '../../../lib/paths.ts';
import { Read } from '../../../lib/read/index.ts';
import { useMessages } from '../../../messages/index.ts';
import { Form } from '../../../ui/form/index.ts';
import { PageHeader } from '../../../ui/layout/index.ts';
import { PlantFields, traitsOf, type PlantValues } from './plant-fields.tsx';

export function EditPlantPage() {
  const { plantId } = useParams({ strict: false });
  const query = useQuery(trpc.plants.readPlant.queryOptions({ plantId: plantId ?? '' }));
  return <Read query={query}>{(plant) => <EditPlant plant={plant} />}</Read>;
}

const valuesOf = (plant: contracts.PlantPage): PlantValues => ({
  scientificName: `${plant.scientificName} ${plant.scientificNameAuthorship}`.trim(),
  vernacularName: plant.vernacularName,
  family: plant.family,
  code: plant.code,
  rootHabit: plant.rootHabit,
  larvalHost: plant.larvalHost,
  dormantMonths: plant.dormantMonths,
  lastEmergenceMd: plant.lastEmergenceMd ?? '',
  yearOfFirstBloom: plant.yearOfFirstBloom,
  nativeRegions: plant.nativeRegions,
  handling: plant.handling,
});

function EditPlant({ plant }: { plant: contracts.PlantPage }) {
  const { form: say } = useMessages().plants;
  const navigate = useNavigate();
  const form = useCommandForm({
    command: useCommand('plants.editPlant', { title: say.editTitle(plant.scientificName) }),
    contract: contracts.editPlant,
    initial: valuesOf(plant),
    body: (values: PlantValues) => ({ plantId: plant.id, ...traitsOf(values) }),
    row: { id: 'plantId', edition: plant.edition },
    onSaved: () => void navigate({ to: paths.plant(plant.id) }),
  });
  return (
    <>
      <PageHeader
        title={say.editTitle(plant.scientificName)}
        back={{ to: paths.plant(plant.id), label: plant.scientificName }}
        facts={say.own}
      />
      <Form {...form.props}>
        <PlantFields form={form} isNew={false} />
        <Submit form={form}>{say.save}</Submit>
      </Form>
    </>
  );
}
