/** What serves a line: pulled plants, and the lots and batches that hold units for it, with the ways to tie, untie and give them up. */
import type { promises as contracts, promises } from '@rootclock/contracts';
import { useCommand } from '../../../../lib/outbox/index.ts';
import { paths } from '../../../../lib/paths.ts';
import { tellRefused } from '../../../../lib/tell-refused.ts';
import { useMessages } from '../../../../messages/index.ts';
import { Menu, TextLink, type MenuAction } from '../../../../ui/action/index.ts';
import { Badge, toast } from '../../../../ui/feedback/index.ts';
import { SupplyClock } from '../../marks/supply-clock.tsx';
import { Taxon } from '../../../plants/taxon.tsx';
import { LineWhy } from './line-why.tsx';

export interface LineSuppliesProps {
  line: contracts.OrderLineRow;
  mayChange: boolean;
}

export function LineSupplies({ line, mayChange }: LineSuppliesProps) {
  const { promises } = useMessages();
  const words = promises.line;
  const commands = useSupplyCommands(line.id);
  if (line.reservations.length === 0 && line.staged.length === 0) return null;
  return (
    <div className="line-supplies">
      {line.staged.map((staged) => (
        <div key={staged.lotId} className="supply-row">
          <div className="supply-words">
            <p className="supply-head">
              <TextLink to={paths.lot(staged.lotId)}>{staged.lotCode}</TextLink>
              {promises.marks.pulled(staged.units)}
            </p>
            <OtherItem line={line} supply={staged} />
          </div>
        </div>
      ))}
      {line.reservations.map((reservation) => (
        <SupplyRow
          key={`${reservation.supplyId}/${reservation.pinned}`}
          line={line}
          reservation={reservation}
          commands={mayChange ? commands : null}
        />
      ))}
      {mayChange && line.reservations.some(({ pinned }) => pinned) && <p className="field-hint">{words.tiedHint}</p>}
      {line.reservations.length > 0 && <LineWhy lineId={line.id} />}
    </div>
  );
}

/** What stands in for the item asked for is named. */
function OtherItem({
  line,
  supply,
}: {
  line: contracts.OrderLineRow;
  supply: { scientificName: string; containerCode: string };
}) {
  if (supply.scientificName === line.scientificName && supply.containerCode === line.containerCode) return null;
  return (
    <p>
      <Taxon name={supply.scientificName} />, {supply.containerCode}
    </p>
  );
}

function SupplyRow({
  line,
  reservation,
  commands,
}: {
  line: contracts.OrderLineRow;
  reservation: promises.ReservationRow;
  commands: ReturnType<typeof useSupplyCommands> | null;
}) {
  const { promises } = useMessages();
  const words = promises.line;
  const { code, units, pinned, supplyId, supplyKind, readyOn, rootChecked, plantByOn, leaveByOn } = reservation;
  const leavesEarlier = leaveByOn !== null && leaveByOn !== plantByOn;
  return (
    <div className="supply-row">
      <div className="supply-words">
        <p className="supply-head">
          <TextLink to={supplyKind === 'lot' ? paths.lot(supplyId) : paths.batch(supplyId)}>{code}</TextLink>
          {promises.marks.reserved(units)}
          {pinned && <Badge shape="tied">{words.tied}</Badge>}
          {supplyKind === 'batch' && <Badge shape="open">{words.batch}</Badge>}
        </p>
        <OtherItem line={line} supply={reservation} />
        <SupplyClock {...reservation} tied={pinned ? 'whole' : 'part'} />
        {leavesEarlier && <p>{promises.marks.leaveBy(leaveByOn)}</p>}
        {!rootChecked && (
          <p className="supply-note">
            {supplyKind === 'lot'
              ? promises.marks.notChecked
              : readyOn
                ? promises.marks.readyOn(readyOn)
                : promises.marks.readyUnknown}
          </p>
        )}
        {reservation.places.length > 0 && (
          <p className="supply-note">
            {reservation.places.map((place) => `${place.code} (${place.units})`).join(', ')}
          </p>
        )}
      </div>
      {commands && <SupplyActions reservation={reservation} commands={commands} />}
    </div>
  );
}

/** The commands belong to the card: the row of a lot is drawn anew as soon as it is tied or given up. */
function useSupplyCommands(lineId: string) {
  const words = useMessages().promises.line;
  const pin = useCommand('promises.pinReservation', { title: words.tie });
  const unpin = useCommand('promises.unpinReservation', { title: words.untie });
  const release = useCommand('promises.releaseReservation', { title: words.release });
  return {
    tie: (supplyId: string, units: number) => pin.send({ lineId, supplyId, units }),
    untie: (supplyId: string) => unpin.send({ lineId, supplyId }),
    release: (supplyId: string) => release.send({ lineId, supplyId }),
  };
}

function SupplyActions({
  reservation,
  commands,
}: {
  reservation: promises.ReservationRow;
  commands: ReturnType<typeof useSupplyCommands>;
}) {
  const { promises, ui } = useMessages();
  const words = promises.line;
  const { code, units, pinned, supplyId } = reservation;
  const tie = () => commands.tie(supplyId, units);
  const untie = () => commands.untie(supplyId);
  const actions: MenuAction[] = [
    pinned
      ? {
          id: 'untie',
          label: words.untie,
          onAction: () =>
            void untie().then(
              () => toast({ text: words.untiedToast(code), undo: () => void tie().catch(tellRefused) }),
              tellRefused,
            ),
        }
      : {
          id: 'tie',
          label: words.tie,
          onAction: () =>
            void tie().then(
              () => toast({ text: words.tiedToast(units, code), undo: () => void untie().catch(tellRefused) }),
              tellRefused,
            ),
        },
    {
      id: 'release',
      label: words.release,
      danger: true,
      // Tying it again is what takes a release back.
      onAction: () =>
        void commands.release(supplyId).then(
          () =>
            toast({
              text: words.releasedToast(code),
              action: { label: words.tieAgain, onAction: () => void tie().catch(tellRefused) },
            }),
          tellRefused,
        ),
    },
  ];
  return <Menu look="quiet" label={ui.more} aria-label={words.actionsOf(code)} actions={actions} />;
}
