/** Adds a planting window, changes or retires one. What that would move is said before it is done. */
import { potLife as contracts } from '@rootclock/contracts';
import { useQuery } from '@tanstack/react-query';
import { useState } from 'react';
import { trpc } from '../../../lib/api/index.ts';
import { Submit, useCommandForm } from '../../../lib/form/index.ts';
import { newId } from '../../../lib/ids.ts';
import { useCommand } from '../../../lib/outbox/index.ts';
import { tellRefused } from '../../../lib/tell-refused.ts';
import { useMessages } from '../../../messages/index.ts';
import { Button } from '../../../ui/action/index.ts';
import { toast } from '../../../ui/feedback/index.ts';
import { NumberField, SelectField, TextField } from '../../../ui/fields/index.ts';
import { Form } from '../../../ui/form/index.ts';
import { Sheet } from '../../../ui/overlay/index.ts';
import { MonthDayField } from '../../plants/month-day-field.tsx';
import { Preview } from '../preview.tsx';

interface Values {
  opensMd: string;
  closesMd: string;
  maxContainerMl: number | null;
  region: string;
  note: string;
}

const NONE: Values = { opensMd: '', closesMd: '', maxContainerMl: null, region: '', note: '' };

export function WindowSheet({ window, onClose }: { window: contracts.WindowRow | null; onClose: () => void }) {
  const { windows: say } = useMessages().rules;
  const [newWindowId] = useState(newId);
  const regions = useQuery(trpc.plants.listRegions.queryOptions({}));
  const command = window ? ('editWindow' as const) : ('addWindow' as const);
  const bodyOf = ({ opensMd, closesMd, maxContainerMl, region, note }: Values) => ({
    windowId: window?.id ?? newWindowId,
    opensMd: opensMd || undefined,
    closesMd: closesMd || undefined,
    maxContainerMl,
    region: region || null,
    note,
  });
  const form = useCommandForm({
    command: useCommand(`potLife.${command}`, { title: window ? say.editTitle : say.add }),
    contract: window ? contracts.editWindow : contracts.addWindow,
    initial: window ? { ...window, region: window.region ?? '' } : NONE,
    body: bodyOf,
    ...(window ? { row: { id: 'windowId', edition: window.edition } } : {}),
    onSaved: () => {
      toast({ text: say.saved });
      onClose();
    },
  });
  return (
    <Sheet open onClose={onClose} title={window ? say.editTitle : say.add}>
      <Form {...form.props}>
        <MonthDayField label={say.opens} {...form.field('opensMd')} />
        <MonthDayField label={say.closes} {...form.field('closesMd')} />
        <NumberField label={say.maxContainerMl} unit="ml" optional {...form.field('maxContainerMl')} />
        <SelectField
          label={say.region}
          optional
          empty={say.anyRegion}
          choices={(regions.data ?? []).map(({ code, name }) => ({ value: code, label: name }))}
          {...form.field('region')}
        />
        <TextField label={say.note} optional {...form.field('note')} />
        <Preview change={{ command, body: bodyOf(form.values) }} />
        <Submit form={form} others={window && <RetireWindow window={window} onDone={onClose} />}>
          {say.save}
        </Submit>
      </Form>
    </Sheet>
  );
}

function RetireWindow({ window, onDone }: { window: contracts.WindowRow; onDone: () => void }) {
  const { windows: say } = useMessages().rules;
  const retire = useCommand('potLife.retireWindow', { title: say.retire });
  const add = useCommand('potLife.addWindow', { title: say.add });
  const { opensMd, closesMd, maxContainerMl, region, note } = window;
  // A retired window stays retired: undoing makes the same window anew.
  const putBack = () =>
    void add
      .send({ windowId: newId(), opensMd, closesMd, maxContainerMl, region, note })
      .then(() => toast({ text: say.saved }), tellRefused);
  const takeOut = () =>
    void retire.send({ windowId: window.id }).then(() => {
      toast({ text: say.retired, undo: putBack });
      onDone();
    }, tellRefused);
  return (
    <Button busy={retire.state === 'sending' || retire.state === 'waiting'} onClick={takeOut}>
      {say.retire}
    </Button>
  );
}
