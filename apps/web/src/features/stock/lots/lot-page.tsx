/** A lot's whole story on one page: the pot sign and the days, what can be done, what stands where, the clock, and everything that happened. */
import { useQuery } from '@tanstack/react-query';
import { getRouteApi } from '@tanstack/react-router';
import { daysBetween } from '@rootclock/domain';
import { trpc } from '../../../lib/api/index.ts';
import { useFormat } from '../../../lib/format/index.ts';
import { paths } from '../../../lib/paths.ts';
import { Read } from '../../../lib/read/index.ts';
import { useMessages } from '../../../messages/index.ts';
import { Badge, type BadgeShape } from '../../../ui/feedback/index.ts';
import { PageHeader } from '../../../ui/layout/index.ts';
import { PotSign } from '../../../ui/sign/index.ts';
import { HeadPhoto } from '../../files/photo-tile.tsx';
import { PhotosSection } from '../../files/photos-section.tsx';
import type { Lot } from './lot-data.ts';
import { ClockPanel } from './page/clock-panel.tsx';
import { FactsPanel, FamilyPanel, TreatmentsPanel } from './page/facts-panel.tsx';
import { OpenHolds, PastHolds } from './page/holds-panel.tsx';
import { LotActions } from './page/lot-actions.tsx';
import { StandingPanel } from './page/standing-panel.tsx';
import { StoryPanel } from './page/story-panel.tsx';
import { LivingPanel } from './winter/living-panel.tsx';
import { NotUpPanel } from './winter/not-up-panel.tsx';
import './lot-page.css';

const route = getRouteApi('/signed-in/stock/lots/$lotId');
const SIGN_PX = 84;
const SHAPES: Record<Lot['band'], BadgeShape> = {
  past: 'over',
  due: 'half',
  coming: 'half',
  ample: 'full',
  unlimited: 'open',
};

/** 0–1 of the time between the start of the clock that binds and the plant-by day; null where nothing limits it. */
function shareOf({ rule, confinedOn, containerOn, plantByOn, today }: Lot): number | null {
  const since = rule?.basis === 'confined' ? confinedOn : containerOn;
  if (!since || !plantByOn) return null;
  const whole = daysBetween(since, plantByOn);
  return whole <= 0 ? 1 : Math.min(1, Math.max(0, daysBetween(since, today) / whole));
}

function Head({ lot }: { lot: Lot }) {
  const { page, words } = useMessages().lots;
  const { dates } = useFormat();
  const { plant, units } = lot;
  const tied = units.promised === 0 ? 'none' : units.promised >= units.onHand ? 'whole' : 'part';
  const isOpen = lot.closedOn === null;
  return (
    <PageHeader
      back={{ to: paths.lots(), label: page.back }}
      kicker={page.kicker(lot.code)}
      title={<i lang="la">{plant.scientificName}</i>}
      titleText={`${plant.scientificName}, ${lot.code}`}
      sign={
        <>
          <PotSign
            size={SIGN_PX}
            share={isOpen ? shareOf(lot) : null}
            past={isOpen && lot.band === 'past'}
            dormant={lot.dormant}
            tied={tied}
          />
          <HeadPhoto subject={{ kind: 'lot', id: lot.id }} />
        </>
      }
      facts={
        <>
          {plant.vernacularName && <p>{plant.vernacularName}</p>}
          {lot.closedOn ? (
            <p>{page.closed(dates.long(lot.closedOn))}</p>
          ) : (
            <>
              <p className="lot-plant-by">
                {lot.plantByOn ? page.plantBy(dates.long(lot.plantByOn), dates.fromToday(lot.plantByOn)) : page.noLimit}
              </p>
              <p className="row">
                <Badge shape={SHAPES[lot.band]}>{words.bands[lot.band]}</Badge>
                {lot.dormant && <Badge shape="hatched">{words.observations.dormant}</Badge>}
                {lot.daysInPot === null ? page.inGround : page.inPot(lot.daysInPot)}
              </p>
            </>
          )}
        </>
      }
    />
  );
}

export function LotPage() {
  const { lotId } = route.useParams();
  return (
    <Read query={useQuery(trpc.stock.readLot.queryOptions({ lotId }))} lines={8}>
      {(lot) => (
        <div className="lot-page">
          <Head lot={lot} />
          <OpenHolds lot={lot} />
          <LotActions lot={lot} />
          <div className="lot-columns">
            <div className="lot-column">
              <StandingPanel lot={lot} />
              <NotUpPanel lotId={lot.id} />
              <ClockPanel lot={lot} />
              <LivingPanel lot={lot} />
              <FactsPanel lot={lot} />
              <PhotosSection subject={{ kind: 'lot', id: lot.id }} />
              <FamilyPanel lot={lot} />
              <TreatmentsPanel lot={lot} />
              <PastHolds lot={lot} />
            </div>
            <StoryPanel key={lot.id} lot={lot} />
          </div>
        </div>
      )}
    </Read>
  );
}
