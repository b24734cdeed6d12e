/** When each stage begins: forward from a start, or back from the day plants must be ready, at all three paces. */
import type { propagation as contracts } from '@rootclock/contracts';
import {
  addDays,
  backSchedule,
  forwardAt,
  forwardSchedule,
  isCalendarDate,
  PACES,
  type Schedules,
} from '@rootclock/domain';
import { useState } from 'react';
import { useSession } from '../../../../lib/api/index.ts';
import { useFormat } from '../../../../lib/format/index.ts';
import { useMessages } from '../../../../messages/index.ts';
import { Callout } from '../../../../ui/feedback/index.ts';
import { DateField, RadioField } from '../../../../ui/fields/index.ts';
import { Section } from '../../../../ui/layout/index.ts';
import { ScheduleChart } from './schedule-chart.tsx';

const YEAR = 365;

export function ScheduleSection({ protocol: { version, plant } }: { protocol: contracts.ProtocolPage }) {
  const { page: say } = useMessages().propagation.protocols;
  const { today } = useSession();
  const { dates } = useFormat();
  const [direction, setDirection] = useState<'forward' | 'back'>('forward');
  const [chosen, setChosen] = useState<{ startOn?: string; readyOn?: string }>({});
  const { startOn, readyOn } = { startOn: today, readyOn: addDays(today, YEAR), ...chosen };
  const plan = { stages: version.stages, dormantMonths: plant.dormantMonths };
  const isForward = direction === 'forward';
  const on = isForward ? startOn : readyOn;
  const schedules = isCalendarDate(on) ? (isForward ? forwardSchedule(plan, on) : backSchedule(plan, on)) : null;
  const firstBegins = schedules?.usual.stages[0]?.beginsOn;
  return (
    <Section title={say.schedule}>
      <div className="schedule-asked">
        <RadioField
          name="direction"
          label={say.reckoned}
          look="segments"
          optional="unsaid"
          value={direction}
          onChange={setDirection}
          choices={[
            { value: 'forward', label: say.forward },
            { value: 'back', label: say.back_ },
          ]}
        />
        {isForward ? (
          <DateField
            key="start"
            name="startOn"
            label={say.startOn}
            optional="unsaid"
            value={startOn}
            onChange={(day) => setChosen({ ...chosen, startOn: day })}
          />
        ) : (
          <DateField
            key="ready"
            name="readyOn"
            label={say.readyOn}
            optional="unsaid"
            value={readyOn}
            onChange={(day) => setChosen({ ...chosen, readyOn: day })}
          />
        )}
      </div>
      {schedules && (
        <>
          <p role="status">{isForward ? say.forwardLead(dates.long(on)) : say.backLead(dates.long(on))}</p>
          {!isForward && firstBegins !== undefined && firstBegins < today && (
            <Callout tone="caution">{say.tooLate(dates.long(forwardAt(plan, today, 'usual').readyOn))}</Callout>
          )}
          <ScheduleChart schedules={schedules} />
          <ScheduleTable schedules={schedules} />
        </>
      )}
    </Section>
  );
}

function ScheduleTable({ schedules }: { schedules: Schedules }) {
  const { protocols: say, stages } = useMessages().propagation;
  const { dates } = useFormat();
  return (
    <table className="schedule-table">
      <caption className="only-heard">{say.page.schedule}</caption>
      <thead>
        <tr>
          <th scope="col">{say.page.stageColumn}</th>
          {PACES.map((pace) => (
            <th key={pace} scope="col">
              {say.page.paceColumn[pace]}
            </th>
          ))}
        </tr>
      </thead>
      <tbody>
        {schedules.usual.stages.map(({ kind }, index) => (
          <tr key={kind}>
            <th scope="row">{stages.names[kind]}</th>
            {PACES.map((pace) => (
              <td key={pace}>{dates.short(schedules[pace].stages[index]?.beginsOn ?? '')}</td>
            ))}
          </tr>
        ))}
        {schedules.usual.stages.at(-1)?.kind !== 'ready' && (
          <tr>
            <th scope="row">{say.page.readyRow}</th>
            {PACES.map((pace) => (
              <td key={pace}>{dates.short(schedules[pace].readyOn)}</td>
            ))}
          </tr>
        )}
      </tbody>
    </table>
  );
}
