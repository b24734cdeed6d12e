/** PotLifeMark: the pot sign beside the band's word and the days, for what stands in cells. */
import type { PotBand } from '@rootclock/domain';
import { useSession } from '../../lib/api/index.ts';
import { useFormat } from '../../lib/format/index.ts';
import { useMessages } from '../../messages/index.ts';
import { PotSign } from '../../ui/sign/index.ts';
import { potShare } from './pot-share.ts';
import './pot-life-mark.css';

export interface PotLife {
  confinedOn: string | null;
  containerOn: string | null;
  plantByOn: string | null;
  band: PotBand;
  dormantNow: boolean;
  closedOn: string | null;
}

export const tiedOf = (reserved: number, cautious: number): 'none' | 'part' | 'whole' =>
  reserved === 0 ? 'none' : reserved >= cautious ? 'whole' : 'part';

export function useShare() {
  const { today } = useSession();
  return ({ confinedOn, containerOn, plantByOn, closedOn }: PotLife): number | null =>
    closedOn ? null : potShare(confinedOn ?? containerOn, plantByOn, today);
}

export function PotLifeMark({ life, tied }: { life: PotLife; tied: 'none' | 'part' | 'whole' }) {
  const { propagation } = useMessages();
  const { dates } = useFormat();
  const share = useShare()(life);
  if (life.closedOn) return <>{propagation.list.closedOn(dates.short(life.closedOn))}</>;
  if (life.plantByOn === null)
    return (
      <span>
        {life.confinedOn === null && life.containerOn === null ? propagation.list.noClock : propagation.bands.unlimited}
      </span>
    );
  return (
    <span className="pot-life">
      <PotSign share={share} past={life.band === 'past'} dormant={life.dormantNow} tied={tied} />
      <span>
        <span className="figure">{dates.short(life.plantByOn)}</span>, {dates.fromToday(life.plantByOn)}
        <br />
        {life.dormantNow
          ? `${propagation.bands[life.band]}, ${propagation.page.dormant}`
          : propagation.bands[life.band]}
      </span>
    </span>
  );
}
