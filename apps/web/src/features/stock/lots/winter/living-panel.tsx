/** LivingPanel: how many of a lot will probably still live on its plant-by day, and on a day somebody asks about. */
import { useQuery } from '@tanstack/react-query';
import { addDays, expectedLiving, isCalendarDate } from '@rootclock/domain';
import { useState } from 'react';
import { trpc, useSession } from '../../../../lib/api/index.ts';
import { useFormat } from '../../../../lib/format/index.ts';
import { Read } from '../../../../lib/read/index.ts';
import { useMessages } from '../../../../messages/index.ts';
import { DateField } from '../../../../ui/fields/index.ts';
import { DefinitionList, Section } from '../../../../ui/layout/index.ts';
import type { Lot } from '../lot-data.ts';
import './winter.css';

const DAYS_OF_MONTH = 30;
const HALF_A_YEAR = 182;

export function LivingPanel({ lot }: { lot: Lot }) {
  const { winter: say } = useMessages();
  const { today } = useSession();
  const { dates, numbers } = useFormat();
  const query = useQuery(trpc.stock.readLivingRates.queryOptions({ lotId: lot.id }));
  const [chosenOn, setChosenOn] = useState<string | null>(null);
  const on = chosenOn ?? addDays(today, HALF_A_YEAR);
  const { onHand } = lot.units;
  if (onHand === 0 || lot.container.kind === 'ground') return null;
  return (
    <Section title={say.living}>
      <p>{say.livingLead}</p>
      <Read query={query} lines={3}>
        {({ lossRatePerDay, winterSurvival, winter, restsOn }) => {
          const livingOn = (day: string) =>
            say.about(
              Math.round(
                expectedLiving({ units: onHand, from: today, on: day, lossRatePerDay, winterSurvival, winter }),
              ),
              onHand,
            );
          const monthly = new Intl.NumberFormat(undefined, { maximumSignificantDigits: 2 }).format(
            100 * (1 - Math.exp(-lossRatePerDay * DAYS_OF_MONTH)),
          );
          return (
            <>
              <DefinitionList
                facts={[
                  lot.plantByOn !== null &&
                    lot.plantByOn > today && {
                      term: say.byPlantBy(dates.long(lot.plantByOn)),
                      value: <span className="figure">{livingOn(lot.plantByOn)}</span>,
                    },
                ]}
              />
              <div className="living-day">
                <DateField name="on" label={say.chosenDay} min={today} value={on} onChange={setChosenOn} />
                {isCalendarDate(on) && <output className="figure living-answer">{livingOn(on)}</output>}
              </div>
              <ul className="living-basis">
                <li>
                  {say.rate(monthly)}.{' '}
                  {restsOn.plantDays > 0 ? say.restsOn(restsOn.losses, numbers.count(restsOn.plantDays)) : say.noDays}.
                </li>
                <li>
                  {say.winterShare(numbers.share(winterSurvival))}.{' '}
                  {restsOn.winterPlants > 0
                    ? say.restsOnWinter(restsOn.winterLived, restsOn.winterPlants, restsOn.winterLots)
                    : say.noWinter}
                  .
                </li>
              </ul>
            </>
          );
        }}
      </Read>
    </Section>
  );
}
