/** Adds a container or changes one; code and kind are settled once, since stock stands in it. */
import { plants as contracts } from '@rootclock/contracts';
import { CONTAINER_KINDS, type ContainerKind } from '@rootclock/domain';
import { useState } from 'react';
import { Submit, useCommandForm } from '../../../lib/form/index.ts';
import { newId } from '../../../lib/ids.ts';
import { useCommand } from '../../../lib/outbox/index.ts';
import { useMessages } from '../../../messages/index.ts';
import { toast } from '../../../ui/feedback/index.ts';
import { NumberField, SelectField, TextField } from '../../../ui/fields/index.ts';
import { Form } from '../../../ui/form/index.ts';
import { Sheet } from '../../../ui/overlay/index.ts';
import { RetireContainer } from './retire-container.tsx';

interface Values {
  code: string;
  kind: ContainerKind | '';
  name: string;
  volumeMl: number | null;
  depthMm: number | null;
  widthMm: number | null;
  lengthMm: number | null;
  cells: number | null;
  tradeClass: string;
  note: string;
}

const NONE: Values = {
  code: '',
  kind: 'pot',
  name: '',
  volumeMl: null,
  depthMm: null,
  widthMm: null,
  lengthMm: null,
  cells: null,
  tradeClass: '',
  note: '',
};
const measuresOf = ({ name, volumeMl, depthMm, widthMm, lengthMm, cells, tradeClass, note }: Values) => ({
  name,
  volumeMl,
  depthMm,
  widthMm,
  lengthMm,
  cells,
  tradeClass: tradeClass || null,
  note,
});

interface SheetProps {
  container: contracts.ContainerRow | null;
  onClose: () => void;
}

export function ContainerSheet({ container, onClose }: SheetProps) {
  const { containers: say } = useMessages().plants;
  return (
    <Sheet open onClose={onClose} title={container ? say.editTitle(container.name) : say.add}>
      {container ? <EditForm container={container} onClose={onClose} /> : <AddForm onClose={onClose} />}
    </Sheet>
  );
}

function useSaved(onClose: () => void) {
  const { containers: say } = useMessages().plants;
  return (_: unknown, { name }: Values) => {
    toast({ text: say.saved(name) });
    onClose();
  };
}

function AddForm({ onClose }: { onClose: () => void }) {
  const { containers: say } = useMessages().plants;
  const [containerId] = useState(newId);
  const form = useCommandForm({
    command: useCommand('plants.addContainer', { title: say.add }),
    contract: contracts.addContainer,
    initial: NONE,
    body: (values: Values) => ({
      containerId,
      code: values.code.trim(),
      kind: values.kind || undefined,
      ...measuresOf(values),
    }),
    onSaved: useSaved(onClose),
  });
  return (
    <Form {...form.props}>
      <Fields form={form} isNew />
      <Submit form={form}>{say.save}</Submit>
    </Form>
  );
}

function EditForm({ container, onClose }: { container: contracts.ContainerRow; onClose: () => void }) {
  const { containers: say } = useMessages().plants;
  const form = useCommandForm({
    command: useCommand('plants.editContainer', { title: say.editTitle(container.name) }),
    contract: contracts.editContainer,
    initial: { ...container, tradeClass: container.tradeClass ?? '' } as Values,
    body: (values: Values) => ({ containerId: container.id, ...measuresOf(values) }),
    row: { id: 'containerId', edition: container.edition },
    onSaved: useSaved(onClose),
  });
  return (
    <Form {...form.props}>
      <Fields form={form} isNew={false} />
      <Submit form={form} others={<RetireContainer container={container} onDone={onClose} />}>
        {say.save}
      </Submit>
    </Form>
  );
}

interface FormOf {
  values: Values;
  field: <Key extends keyof Values>(
    name: Key,
  ) => { name: Key; value: Values[Key]; onChange: (value: Values[Key]) => void };
}

function Fields({ form, isNew }: { form: FormOf; isNew: boolean }) {
  const { containers: say, containerKinds } = useMessages().plants;
  return (
    <>
      <TextField label={say.name} {...form.field('name')} />
      {isNew && (
        <TextField
          label={say.code}
          hint={say.codeHint}
          autoCapitalize="none"
          spellCheck={false}
          {...form.field('code')}
        />
      )}
      {isNew && (
        <SelectField
          label={say.kind}
          choices={CONTAINER_KINDS.map((value) => ({ value, label: containerKinds[value] }))}
          {...form.field('kind')}
        />
      )}
      {form.values.kind === 'tray' && <NumberField label={say.cells} {...form.field('cells')} />}
      <NumberField label={say.volumeMl} unit="ml" optional {...form.field('volumeMl')} />
      <NumberField label={say.depthMm} unit="mm" optional {...form.field('depthMm')} />
      <NumberField label={say.widthMm} unit="mm" optional {...form.field('widthMm')} />
      <NumberField label={say.lengthMm} unit="mm" optional {...form.field('lengthMm')} />
      <TextField label={say.tradeClass} optional {...form.field('tradeClass')} />
      <TextField label={say.note} optional {...form.field('note')} />
    </>
  );
}
