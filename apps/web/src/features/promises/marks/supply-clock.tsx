/** SupplyClock: a lot's pot sign beside the day by which it must be in the ground, in words and days. */
import { useSession } from '../../../lib/api/index.ts';
import { useFormat } from '../../../lib/format/index.ts';
import { useMessages } from '../../../messages/index.ts';
import { PotSign } from '../../../ui/sign/index.ts';
import { potShare } from '../../propagation/pot-share.ts';
import './supply-clock.css';

export interface SupplyClockProps {
  clockOn: string | null;
  plantByOn: string | null;
  plantByState: string;
  tied: 'none' | 'part' | 'whole';
  size?: number;
}

export function SupplyClock({ clockOn, plantByOn, plantByState, tied, size = 28 }: SupplyClockProps) {
  const { promises } = useMessages();
  const { today } = useSession();
  const { dates } = useFormat();
  const isPast = plantByOn !== null && plantByOn < today;
  const words =
    plantByOn === null
      ? promises.marks.noLimit
      : (isPast ? promises.marks.plantByPast : promises.marks.plantBy)(plantByOn, dates.fromToday(plantByOn));
  return (
    <span className="supply-clock">
      <PotSign share={potShare(clockOn, plantByOn, today)} past={isPast} dormant={false} tied={tied} size={size} />
      <span className={isPast ? 'supply-clock-past' : undefined}>
        {words}
        {plantByState === 'no-window' && !isPast && `; ${promises.marks.noWindow}`}
      </span>
    </span>
  );
}
