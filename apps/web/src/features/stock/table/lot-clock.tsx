/** LotClock: the pot sign of a lot beside the day by which it must be in the ground, in words and days. */
import { daysBetween, type PotBand } from '@rootclock/domain';
import { Fragment } from 'react';
import { useFormat } from '../../../lib/format/index.ts';
import { useSession } from '../../../lib/api/index.ts';
import { useMessages } from '../../../messages/index.ts';
import { PotSign } from '../../../ui/sign/index.ts';
import './lot-clock.css';

export interface ClockFacts {
  plantByOn: string | null;
  plantByState: string;
  clockOn: string | null;
  clockAssumed: boolean;
  band: PotBand;
  dormant: boolean;
  closedOn: string | null;
  onHandUnits: number;
  reservedUnits: number;
}

/** 0–1 of the time from the clock's start to the plant-by day; null where nothing limits it. */
export function shareOfLife(
  { clockOn, plantByOn }: Pick<ClockFacts, 'clockOn' | 'plantByOn'>,
  today: string,
): number | null {
  if (plantByOn === null || clockOn === null) return null;
  const whole = daysBetween(clockOn, plantByOn);
  return whole <= 0 ? 1 : Math.min(1, Math.max(0, daysBetween(clockOn, today) / whole));
}

export const tiedOf = ({
  reservedUnits,
  onHandUnits,
}: Pick<ClockFacts, 'reservedUnits' | 'onHandUnits'>): 'none' | 'part' | 'whole' =>
  reservedUnits === 0 ? 'none' : reservedUnits < onHandUnits ? 'part' : 'whole';

export function LotClock({ lot, size = 28 }: { lot: ClockFacts; size?: number }) {
  const { table, bands } = useMessages().stockIn;
  const { dates } = useFormat();
  const { today } = useSession();
  if (lot.closedOn) return <span>{table.gone(dates.long(lot.closedOn))}</span>;
  const notes = [
    lot.dormant && table.dormant,
    lot.plantByState === 'no-window' && table.noWindow,
    lot.plantByOn && lot.clockAssumed && table.assumed,
  ].filter((note) => typeof note === 'string');
  return (
    <span className="lot-clock">
      <PotSign
        share={shareOfLife(lot, today)}
        past={lot.band === 'past'}
        dormant={lot.dormant}
        tied={tiedOf(lot)}
        size={size}
      />
      <span className="lot-clock-words">
        <span>
          <b className={`lot-clock-${lot.band}`}>{bands[lot.band]}</b>
          {lot.plantByOn && ` ${dates.fromToday(lot.plantByOn)}`}
        </span>
        <span className="lot-clock-note">
          {lot.plantByOn && <time dateTime={lot.plantByOn}>{dates.short(lot.plantByOn)}</time>}
          {notes.map((note) => (
            <Fragment key={note}> · {note}</Fragment>
          ))}
        </span>
      </span>
    </span>
  );
}
