/** What stands where, what of it is promised and to whom, and what is free. */
import { serverNow } from '../../../../lib/clock/index.ts';
import { useFormat } from '../../../../lib/format/index.ts';
import { paths } from '../../../../lib/paths.ts';
import { useMessages } from '../../../../messages/index.ts';
import { TextLink } from '../../../../ui/action/index.ts';
import { Badge } from '../../../../ui/feedback/index.ts';
import { Section } from '../../../../ui/layout/index.ts';
import type { Lot } from '../lot-data.ts';

function Places({ lot }: { lot: Lot }) {
  const { page } = useMessages().lots;
  const { dates, numbers } = useFormat();
  if (lot.standing.length === 0) return <p>{page.nothingStands}</p>;
  return (
    <ul className="lot-places">
      {lot.standing.map((at) => {
        const isClosed = at.closedUntilAt !== null && Date.parse(at.closedUntilAt) > serverNow();
        return (
          <li key={at.placeId} className="lot-place">
            <span className="figure lot-figure">{numbers.count(at.units)}</span>
            <span>
              <TextLink to={paths.place(at.placeId)}>
                {at.name === at.code ? at.code : `${at.code} · ${at.name}`}
              </TextLink>
              {isClosed && at.closedUntilAt && (
                <>
                  {' '}
                  <Badge shape="over">{page.placeClosed(dates.instant(at.closedUntilAt), at.closedReason ?? '')}</Badge>
                </>
              )}
            </span>
          </li>
        );
      })}
    </ul>
  );
}

export function StandingPanel({ lot }: { lot: Lot }) {
  const { page, words } = useMessages().lots;
  const { dates, numbers } = useFormat();
  const { onHand, promised, free, staged } = lot.units;
  const sums: [string, number][] = [
    [page.onHand, onHand],
    [page.promised, promised],
    [page.free, free],
    ...(staged > 0 ? [[page.staged, staged] as [string, number]] : []),
  ];
  return (
    <>
      <Section title={page.standing} aside={lot.countKind === 'counted' ? undefined : words.countKinds[lot.countKind]}>
        <Places lot={lot} />
        <dl className="lot-sums">
          {sums.map(([term, units]) => (
            <div key={term}>
              <dt>{term}</dt>
              <dd className="figure lot-figure">{numbers.count(units)}</dd>
            </div>
          ))}
        </dl>
      </Section>
      {(lot.promised.length > 0 || lot.staged.length > 0) && (
        <Section title={page.promises}>
          <ul className="lot-list">
            {lot.promised.map((line) => (
              <li key={line.lineId}>
                <TextLink to={paths.order(line.orderId)}>
                  {page.promisedTo(line.orderCode, line.client, line.units, dates.short(line.dueOn))}
                </TextLink>
                {line.pinned && (
                  <>
                    {' '}
                    <Badge shape="tied">{page.pinned}</Badge>
                  </>
                )}
              </li>
            ))}
            {lot.staged.map((line) => (
              <li key={`staged-${line.lineId}`}>
                <TextLink to={paths.order(line.orderId)}>
                  {page.stagedFor(line.orderCode, line.client, line.units)}
                </TextLink>{' '}
                <Badge shape="open">{page.staged}</Badge>
              </li>
            ))}
          </ul>
        </Section>
      )}
    </>
  );
}
