/** The freeze day, with what another one would move. */
import { potLife as contracts } from '@rootclock/contracts';
import { Submit, useCommandForm } from '../../../lib/form/index.ts';
import { useCommand } from '../../../lib/outbox/index.ts';
import { useMessages } from '../../../messages/index.ts';
import { toast } from '../../../ui/feedback/index.ts';
import { Form } from '../../../ui/form/index.ts';
import { MonthDayField } from '../../plants/month-day-field.tsx';
import { Preview } from '../preview.tsx';

export function FreezeDay({ freezeMd, edition }: { freezeMd: string; edition: number }) {
  const { windows: say } = useMessages().rules;
  const form = useCommandForm({
    command: useCommand('potLife.setFreezeDay', { title: say.freezeTitle }),
    contract: contracts.setFreezeDay,
    initial: { freezeMd },
    body: (values) => ({ freezeMd: values.freezeMd || undefined }),
    row: { id: 'nursery', edition },
    onSaved: () => toast({ text: say.freezeSaved }),
  });
  const isChanged = form.values.freezeMd !== freezeMd;
  return (
    <Form {...form.props}>
      <MonthDayField label={say.freezeDay} {...form.field('freezeMd')} />
      {isChanged && <Preview change={{ command: 'setFreezeDay', body: form.values }} />}
      {isChanged && <Submit form={form}>{say.freezeSave}</Submit>}
    </Form>
  );
}
