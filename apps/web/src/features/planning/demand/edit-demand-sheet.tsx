/** Changes what is expected, or withdraws it. */
import { planning as contracts } from '@rootclock/contracts';
import { useSession } from '../../../lib/api/index.ts';
import { Submit, useCommandForm } from '../../../lib/form/index.ts';
import { useFormat } from '../../../lib/format/index.ts';
import { useCommand } from '../../../lib/outbox/index.ts';
import { tellRefused } from '../../../lib/tell-refused.ts';
import { useMessages } from '../../../messages/index.ts';
import { Button } from '../../../ui/action/index.ts';
import { toast } from '../../../ui/feedback/index.ts';
import { Form } from '../../../ui/form/index.ts';
import { Sheet } from '../../../ui/overlay/index.ts';
import { demandBody, DemandFields, type DemandValues, demandValues, valueOf } from './demand-fields.tsx';

export function EditDemandSheet({ row, onClose }: { row: contracts.ExpectedDemandRow; onClose: () => void }) {
  const { demand: say } = useMessages().planning;
  const { numbers } = useFormat();
  const { nursery } = useSession();
  const withdraw = useCommand('planning.withdrawExpectedDemand', { title: say.withdraw });
  const initial: DemandValues = {
    plantId: { id: row.plantId, scientificName: row.scientificName },
    containerId: { id: row.containerId, name: row.containerName },
    wanted: row.wantedOn,
    units: row.units,
    value: valueOf(row.unitValueMinor),
    note: row.note,
  };
  const form = useCommandForm({
    command: useCommand('planning.editExpectedDemand', { title: say.changeTitle }),
    contract: contracts.editExpectedDemand,
    initial,
    body: (values: DemandValues) => ({ demandId: row.demandId, ...demandBody(values) }),
    row: { id: 'demandId', edition: row.edition },
    fromBody: (body, called) => demandValues(body as unknown as ReturnType<typeof demandBody>, called, initial),
    words: {
      unitValueMinor: {
        label: say.value,
        value: (minor) => (typeof minor === 'number' ? numbers.money(minor, nursery.currency) : ''),
      },
    },
    onSaved: () => {
      toast({ text: say.changed });
      onClose();
    },
  });
  const takeOut = () => {
    withdraw.send({ demandId: row.demandId }).then(() => {
      toast({ text: say.withdrawn(row.scientificName) });
      onClose();
    }, tellRefused);
  };
  return (
    <Sheet open onClose={onClose} title={say.changeTitle}>
      <Form {...form.props}>
        <DemandFields field={form.field} />
        <Submit
          form={form}
          others={
            <Button look="danger" busy={withdraw.state === 'sending'} onClick={takeOut}>
              {say.withdraw}
            </Button>
          }
        >
          {say.save}
        </Submit>
      </Form>
    </Sheet>
  );
}
