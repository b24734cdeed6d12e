/** The form for many expected needs in a row: pot, season and worth stay filled in, so that a further plant costs a name and a number. */
import { planning as contracts } from '@rootclock/contracts';
import { useState } from 'react';
import { useSession } from '../../../lib/api/index.ts';
import { Submit, useCommandForm } from '../../../lib/form/index.ts';
import { newId } from '../../../lib/ids.ts';
import { useCommand } from '../../../lib/outbox/index.ts';
import { useMessages } from '../../../messages/index.ts';
import { toast } from '../../../ui/feedback/index.ts';
import { Form } from '../../../ui/form/index.ts';
import { demandBody, DemandFields, type DemandValues } from './demand-fields.tsx';

export function AddDemandForm() {
  const { demand: say } = useMessages().planning;
  const { today } = useSession();
  const [turn, setTurn] = useState(0);
  const nextSpring = `${Number(today.slice(0, 4)) + (today.slice(5) < '03-01' ? 0 : 1)}-spring`;
  const initial: DemandValues = {
    plantId: null,
    containerId: null,
    wanted: nextSpring,
    units: null,
    value: null,
    note: '',
  };
  const form = useCommandForm({
    command: useCommand('planning.addExpectedDemand', { title: say.addTitle }),
    contract: contracts.addExpectedDemand,
    initial,
    body: (values: DemandValues, previous) => ({ demandId: previous?.demandId ?? newId(), ...demandBody(values) }),
    onSaved: (_answer, values) => {
      toast({ text: say.saved(values.plantId?.scientificName ?? '') });
      form.restart({ containerId: values.containerId, wanted: values.wanted, value: values.value });
      // The pickers hold what was typed; with a new turn they begin anew.
      setTurn((count) => count + 1);
    },
  });
  return (
    <Form key={turn} {...form.props}>
      <DemandFields field={form.field} />
      <Submit form={form}>{say.save}</Submit>
    </Form>
  );
}
