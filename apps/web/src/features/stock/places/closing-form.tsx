/** ClosingForm closes a place until an instant of the nursery's clock; OpeningForm opens it before its time, with a reason. */
import { stock as contracts } from '@rootclock/contracts';
import { DateTime } from 'luxon';
import { useSession } from '../../../lib/api/index.ts';
import { Submit, useCommandForm } from '../../../lib/form/index.ts';
import { useFormat } from '../../../lib/format/index.ts';
import { useCommand } from '../../../lib/outbox/index.ts';
import { useMessages } from '../../../messages/index.ts';
import { Callout, toast } from '../../../ui/feedback/index.ts';
import { TextField } from '../../../ui/fields/index.ts';
import { Form } from '../../../ui/form/index.ts';
import { Dialog } from '../../../ui/overlay/index.ts';
import { InstantField } from './instant-field.tsx';

interface PlaceSaid {
  placeId: string;
  code: string;
}

interface ClosedPlace extends PlaceSaid {
  edition: number;
  closedUntilAt: string | null;
}

export function ClosingForm({ place, onClose }: { place: PlaceSaid; onClose: () => void }) {
  const { places } = useMessages().stockIn;
  const { nursery, today } = useSession();
  const form = useCommandForm({
    command: useCommand('stock.closePlace', { title: places.closeTitle(place.code) }),
    contract: contracts.closePlace,
    initial: { until: `${today}T18:00`, reason: '' },
    // The hour is the nursery's, wherever the phone believes to be.
    body: ({ until, reason }) => ({
      placeId: place.placeId,
      untilAt: DateTime.fromISO(until, { zone: nursery.zone }).toUTC().toISO() ?? until,
      reason,
    }),
    onSaved: () => {
      toast({ text: places.closedNow(place.code) });
      onClose();
    },
  });
  return (
    <Dialog open onClose={onClose} title={places.closeTitle(place.code)}>
      <Form {...form.props}>
        <p>{places.closeText}</p>
        <InstantField label={places.until} hint={places.untilHint} {...form.field('until')} name="untilAt" />
        <TextField label={places.reason} hint={places.closeReasonHint} {...form.field('reason')} maxLength={120} />
        <Submit form={form} look="danger">
          {places.close}
        </Submit>
      </Form>
    </Dialog>
  );
}

export function OpeningForm({ place, onClose }: { place: ClosedPlace; onClose: () => void }) {
  const { places } = useMessages().stockIn;
  const { dates } = useFormat();
  const form = useCommandForm({
    command: useCommand('stock.openPlace', { title: places.openTitle(place.code) }),
    contract: contracts.openPlace,
    initial: { reason: '' },
    body: ({ reason }) => ({ placeId: place.placeId, reason }),
    row: { id: 'placeId', edition: place.edition, shown: { untilAt: place.closedUntilAt } },
    words: {
      untilAt: { label: places.until, value: (at) => (typeof at === 'string' ? dates.instant(at) : places.open) },
    },
    onSaved: () => {
      toast({ text: places.openAgain(place.code) });
      onClose();
    },
  });
  return (
    <Dialog open onClose={onClose} title={places.openTitle(place.code)}>
      <Form {...form.props}>
        <Callout tone="caution">{places.openText}</Callout>
        <TextField label={places.reason} {...form.field('reason')} maxLength={120} />
        <Submit form={form} look="danger">
          {places.open}
        </Submit>
      </Form>
    </Dialog>
  );
}
