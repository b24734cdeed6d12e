/** Changes the penalty of a rule, or retires it. */
import { orders as contracts } from '@rootclock/contracts';
import { Submit, useCommandForm } from '../../../lib/form/index.ts';
import { newId } from '../../../lib/ids.ts';
import { useCommand } from '../../../lib/outbox/index.ts';
import { tellRefused } from '../../../lib/tell-refused.ts';
import { useMessages } from '../../../messages/index.ts';
import { Button } from '../../../ui/action/index.ts';
import { toast } from '../../../ui/feedback/index.ts';
import { NumberField, TextField } from '../../../ui/fields/index.ts';
import { Form } from '../../../ui/form/index.ts';
import { Sheet } from '../../../ui/overlay/index.ts';
import { useSubstitutionWords } from './substitution-words.ts';

interface EditProps {
  rule: contracts.SubstitutionRuleRow;
  onClose: () => void;
}

export function EditSubstitutionSheet({ rule, onClose }: EditProps) {
  const { substitutes } = useMessages();
  const { form: say } = substitutes;
  const { who, name } = useSubstitutionWords();
  const form = useCommandForm({
    command: useCommand('orders.editSubstitutionRule', { title: substitutes.changeRule(name(rule)) }),
    contract: contracts.editSubstitutionRule,
    initial: { penalty: rule.penalty as number | null, note: rule.note },
    body: ({ penalty, note }) => ({ ruleId: rule.id, penalty, note }),
    row: { id: 'ruleId', edition: rule.edition },
    onSaved: () => {
      toast({ text: substitutes.saved });
      onClose();
    },
  });
  return (
    <Sheet open onClose={onClose} title={who(rule)}>
      <Form {...form.props}>
        <p>{substitutes.sentences[rule.kind]}</p>
        <NumberField label={say.penalty} hint={say.penaltyHint} steps min={1} {...form.field('penalty')} />
        <TextField label={say.note} optional {...form.field('note')} />
        <Submit form={form} others={<RetireRule rule={rule} onClose={onClose} />}>
          {say.save}
        </Submit>
      </Form>
    </Sheet>
  );
}

function RetireRule({ rule, onClose }: EditProps) {
  const { substitutes } = useMessages();
  const retire = useCommand('orders.retireSubstitutionRule', { title: substitutes.retire });
  const add = useCommand('orders.addSubstitutionRule', { title: substitutes.add });
  const { kind, plantId, genus, penalty, note } = rule;
  // A retired rule stays retired: undoing makes the same rule anew.
  const putBack = () =>
    void add
      .send({ ruleId: newId(), kind, reach: { plantId, genus }, penalty, note })
      .then(() => toast({ text: substitutes.saved }), tellRefused);
  const takeOut = () =>
    void retire.send({ ruleId: rule.id }).then(() => {
      toast({ text: substitutes.retired, undo: putBack });
      onClose();
    }, tellRefused);
  return (
    <Button busy={retire.state === 'sending' || retire.state === 'waiting'} onClick={takeOut}>
      {substitutes.retire}
    </Button>
  );
}
