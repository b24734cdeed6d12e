/** What was applied, to lots or to a whole place. It closes places until the re-entry time and holds hosts of larvae back. */
import { stock as contracts } from '@rootclock/contracts';
import { DateTime } from 'luxon';
import { useSession } from '../../../../lib/api/index.ts';
import { Submit, useCommandForm } from '../../../../lib/form/index.ts';
import { useFormat } from '../../../../lib/format/index.ts';
import { useCommand } from '../../../../lib/outbox/index.ts';
import { isText, useRemembered } from '../../../../lib/remember.ts';
import { useMessages } from '../../../../messages/index.ts';
import { Callout, toast } from '../../../../ui/feedback/index.ts';
import {
  DateField,
  FieldFrame,
  NumberField,
  TextArea,
  TextField,
  useField,
  type FieldProps,
} from '../../../../ui/fields/index.ts';
import { Form } from '../../../../ui/form/index.ts';
import { Sheet } from '../../../../ui/overlay/index.ts';
import { useLastDay } from '../fields/last.ts';
import { useUndoable } from '../undo.ts';
import type { TargetSheetProps } from './target-sheet.ts';

function TimeField({ value, onChange, ...props }: FieldProps & { value: string; onChange: (value: string) => void }) {
  const field = useField(props);
  return (
    <FieldFrame field={field} {...props}>
      <input
        {...field.control}
        className="field-box field-box-day"
        type="time"
        value={value}
        onChange={(event) => onChange(event.target.value)}
      />
    </FieldFrame>
  );
}

export function TreatSheet({ target, onClose, onDone }: TargetSheetProps) {
  const { page, treat, sheets } = useMessages().lots;
  const { person, nursery } = useSession();
  const { dates } = useFormat();
  const [day] = useLastDay();
  const [product, keepProduct] = useRemembered('lots.treat.product', '', isText);
  const [applicator, keepApplicator] = useRemembered('lots.treat.applicator', person.name, isText);
  const tell = useUndoable();
  const isPlace = target.placeId !== undefined && target.lotIds === undefined;
  // Both commands ask for the same facts; only what they are about differs.
  const name = isPlace ? 'stock.treatPlace' : 'stock.treatLots';
  const form = useCommandForm({
    command: useCommand<'stock.treatPlace' | 'stock.treatLots'>(name, { title: `${treat.title}: ${target.name}` }),
    contract: isPlace ? contracts.treatPlace : contracts.treatLots,
    initial: {
      product,
      registrationNo: '',
      rate: '',
      applicator,
      target: '',
      day,
      time: DateTime.now().setZone(nursery.zone).toFormat('HH:mm'),
      reentryHours: null as number | null,
      note: '',
    },
    body: (said) => {
      const at = DateTime.fromISO(`${said.day}T${said.time}`, { zone: nursery.zone });
      return {
        ...(isPlace ? { placeId: target.placeId } : { lotIds: target.lotIds }),
        product: said.product,
        registrationNo: said.registrationNo,
        rate: said.rate,
        applicator: said.applicator,
        target: said.target,
        treatedAt: at.isValid ? at.toUTC().toISO() : '',
        reentryHours: said.reentryHours,
        note: said.note,
      };
    },
    onSaved: (answer, said) => {
      keepProduct(said.product);
      keepApplicator(said.applicator);
      tell(treat.saved(answer.lots, answer.closedUntilAt ? dates.instant(answer.closedUntilAt) : null), answer.entryId);
      if (answer.heldLots.length > 0) toast({ text: treat.held(answer.heldLots.join(', ')) });
      onDone();
    },
  });
  return (
    <Sheet open onClose={onClose} title={`${treat.title}: ${target.name}`}>
      <Form {...form.props}>
        <Callout tone="caution">{page.labelIsLaw}</Callout>
        <TextField label={treat.product} maxLength={120} {...form.field('product')} />
        <TextField label={treat.registrationNo} optional maxLength={500} {...form.field('registrationNo')} />
        <TextField label={treat.rate} optional maxLength={500} {...form.field('rate')} />
        <TextField label={treat.target} optional maxLength={120} {...form.field('target')} />
        <TextField label={treat.applicator} hint={treat.applicatorHint} maxLength={120} {...form.field('applicator')} />
        <DateField label={treat.treatedOn} {...form.field('day')} name="treatedAt" />
        <TimeField label={treat.treatedAt} {...form.field('time')} name="time" />
        <NumberField
          label={treat.reentryHours}
          hint={treat.reentryHint}
          unit={treat.hours}
          decimal
          optional
          {...form.field('reentryHours')}
        />
        <TextArea label={sheets.note} optional rows={2} maxLength={2000} {...form.field('note')} />
        <Submit form={form}>{treat.save}</Submit>
      </Form>
    </Sheet>
  );
}
