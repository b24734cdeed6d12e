/** What is lost in pots in each season, and what lives through a winter. */
import { useFormat } from '../../../../lib/format/index.ts';
import { useMessages } from '../../../../messages/index.ts';
import { Section } from '../../../../ui/layout/index.ts';
import { DataTable } from '../../../../ui/table/index.ts';
import type { PlantRecord } from '../record-data.ts';

const DAYS_OF_MONTH = 30;
/** So many of a thousand plants in a month at a rate of deaths per plant-day. */
const ofThousand = (rate: number): number => 1000 * (1 - Math.exp(-rate * DAYS_OF_MONTH));

export function LossesSection({ losses, living }: Pick<PlantRecord, 'losses' | 'living'>) {
  const { record: say } = useMessages();
  const { numbers } = useFormat();
  const { winterPlants, winterLived, winterLots } = living.restsOn;
  const perMonth = (rate: number) => numbers.count(Math.round(ofThousand(rate)));
  return (
    <Section title={say.losses}>
      <p className="record-note">{say.lossesLead}</p>
      <DataTable
        caption={say.losses}
        quietCaption
        rows={losses}
        rowId={(row) => row.season}
        rowName={(row) => say.seasons[row.season]}
        empty={null}
        columns={[
          { key: 'season', header: say.season, title: true, cell: (row) => say.seasons[row.season] },
          { key: 'lost', header: say.lost, figure: true, cell: (row) => numbers.count(row.losses) },
          { key: 'plantDays', header: say.plantDays, figure: true, cell: (row) => numbers.count(row.plantDays) },
          {
            key: 'per',
            header: say.per,
            cell: ({ rate, low, high }) =>
              rate === null || high === null
                ? say.noExposure
                : `${perMonth(rate)} (${say.range(perMonth(low), perMonth(high))})`,
          },
        ]}
      />
      <p>
        {say.winterLine(numbers.share(living.winterSurvival))}{' '}
        {winterPlants > 0 ? say.winterRests(winterLived, winterPlants, winterLots) : say.winterAlone}
      </p>
    </Section>
  );
}
