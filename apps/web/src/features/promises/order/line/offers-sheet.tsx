/** Which lots and batches could serve a line, the one that must leave its pot first standing first; any can be tied to it. */
import { useQuery } from '@tanstack/react-query';
import { type promises, promises as contracts } from '@rootclock/contracts';
import { useState } from 'react';
import { trpc } from '../../../../lib/api/index.ts';
import { Submit, useCommandForm } from '../../../../lib/form/index.ts';
import { useCommand } from '../../../../lib/outbox/index.ts';
import { Read } from '../../../../lib/read/index.ts';
import { useMessages } from '../../../../messages/index.ts';
import { Badge, EmptyState, toast } from '../../../../ui/feedback/index.ts';
import { NumberField } from '../../../../ui/fields/index.ts';
import { Form } from '../../../../ui/form/index.ts';
import { Section } from '../../../../ui/layout/index.ts';
import { Sheet } from '../../../../ui/overlay/index.ts';
import { SupplyClock } from '../../marks/supply-clock.tsx';
import { Taxon } from '../../../plants/taxon.tsx';
import { TriedEdit } from '../../what-if/difference/tried-edit.tsx';
import { WouldShorten } from '../would-shorten.tsx';
import { ShortageReasons } from '../../marks/shortage-reasons.tsx';

/** Of so many offers it is shown at once what tying them would do; of further ones as soon as somebody turns to them. */
const TRIED_AT_ONCE = 6;

export function OffersSheet({ line, onClose }: { line: promises.OrderLineRow; onClose: () => void }) {
  const { promises } = useMessages();
  const words = promises.line;
  const query = useQuery(trpc.promises.offersFor.queryOptions({ lineId: line.id }));
  return (
    <Sheet open onClose={onClose} title={words.chooseTitle}>
      <Read query={query}>
        {({ offers, reasons }) => (
          <div className="stack">
            <p>{words.chooseLead}</p>
            {offers.length === 0 && <EmptyState kind="nothing-matches" title={words.noOffers} />}
            {offers.length > 0 && (
              <ul className="line-supplies">
                {offers.map((offer, index) => (
                  <li key={offer.supplyId}>
                    <Offer line={line} offer={offer} isTriedAtOnce={index < TRIED_AT_ONCE} />
                  </li>
                ))}
              </ul>
            )}
            {reasons.length > 0 && (
              <Section title={words.cannotServe} level={3}>
                <ShortageReasons reasons={reasons} />
              </Section>
            )}
          </div>
        )}
      </Read>
    </Sheet>
  );
}

function Offer({
  line,
  offer,
  isTriedAtOnce,
}: {
  line: promises.OrderLineRow;
  offer: contracts.OfferRow;
  isTriedAtOnce: boolean;
}) {
  const { promises } = useMessages();
  const words = promises.line;
  const [isTried, setTried] = useState(isTriedAtOnce);
  const reserved = line.reservations.filter(({ supplyId }) => supplyId === offer.supplyId);
  const form = useCommandForm({
    command: useCommand('promises.pinReservation', { title: `${words.tie}: ${offer.code}` }),
    contract: contracts.pinReservation,
    initial: {
      units: Math.max(
        1,
        Math.min(
          offer.freeUnits + reserved.reduce((sum, { units }) => sum + units, 0),
          line.shortUnits + line.reservedUnits,
        ),
      ) as number | null,
      acceptedShortages: [] as { lineId: string; units: number }[],
    },
    body: (values) => ({
      lineId: line.id,
      supplyId: offer.supplyId,
      units: values.units,
      acceptedShortages: values.acceptedShortages,
    }),
    onSaved: (_answer, values) => toast({ text: words.tiedToast(values.units ?? 0, offer.code) }),
  });
  return (
    <div className="supply-words offer" onFocus={() => setTried(true)}>
      <p className="supply-head">
        <span>{offer.code}</span>
        <span>{words.free(offer.freeUnits)}</span>
        {offer.supplyKind === 'batch' && <Badge shape="open">{words.batch}</Badge>}
        {offer.releasedByHand && <Badge shape="open">{words.givenUp}</Badge>}
      </p>
      {offer.penalty > 0 && (
        <p>
          <Taxon name={offer.scientificName} />, {offer.containerCode}
        </p>
      )}
      <SupplyClock {...offer} tied={offer.reservedUnits === 0 ? 'none' : offer.freeUnits === 0 ? 'whole' : 'part'} />
      {!offer.rootChecked && (
        <p className="supply-note">
          {offer.supplyKind === 'lot'
            ? promises.marks.notChecked
            : offer.readyOn
              ? promises.marks.readyOn(offer.readyOn)
              : promises.marks.readyUnknown}
        </p>
      )}
      <Form {...form.props}>
        <WouldShorten
          failure={form.failure}
          onAccept={(acceptedShortages) => form.submit({ ...form.values, acceptedShortages })}
          busy={form.busy}
        />
        <NumberField label={words.tieUnits(offer.code)} steps min={1} {...form.field('units')} />
        <TriedEdit
          edit={
            !isTried || form.values.units === null
              ? null
              : { kind: 'pin', lineId: line.id, supplyId: offer.supplyId, units: form.values.units }
          }
        />
        <Submit form={form}>{words.tie}</Submit>
      </Form>
    </div>
  );
}
