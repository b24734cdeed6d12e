/** Changes the terms of a rule, or retires it. What that would move is said before it is done. */
import { potLife as contracts } from '@rootclock/contracts';
import { Submit, useCommandForm } from '../../../lib/form/index.ts';
import { newId } from '../../../lib/ids.ts';
import { useCommand } from '../../../lib/outbox/index.ts';
import { tellRefused } from '../../../lib/tell-refused.ts';
import { useMessages } from '../../../messages/index.ts';
import { Button } from '../../../ui/action/index.ts';
import { toast } from '../../../ui/feedback/index.ts';
import { Form } from '../../../ui/form/index.ts';
import { Sheet } from '../../../ui/overlay/index.ts';
import { useSpanWords } from '../../plants/span-words.ts';
import { Preview } from '../preview.tsx';
import { useRuleWords } from './rule-words.ts';
import { NEW_TERMS, spanParts, type Terms, termsBody, TermsFields } from './terms-fields.tsx';

type Carry = NonNullable<contracts.RuleRow['winterCarry']>;

const termsOf = ({ span, winterCarry, note }: Pick<contracts.RuleRow, 'span' | 'winterCarry' | 'note'>): Terms => ({
  ...NEW_TERMS,
  ...(spanParts(span) ?? { amount: null, unit: 'D' as const }),
  mayCarry: winterCarry !== null,
  maxDays: winterCarry?.maxDays ?? NEW_TERMS.maxDays,
  graceDays: winterCarry?.graceDays ?? NEW_TERMS.graceDays,
  note,
});

export function EditRuleSheet({ rule, onClose }: { rule: contracts.RuleRow; onClose: () => void }) {
  const { rules: say } = useMessages();
  const { whom } = useRuleWords();
  const spanWords = useSpanWords();
  const bodyOf = (terms: Terms) => ({ ruleId: rule.id, ...termsBody(rule.basis, terms) });
  const form = useCommandForm({
    command: useCommand('potLife.editRule', { title: say.changeRule(whom(rule)) }),
    contract: contracts.editRule,
    initial: termsOf(rule),
    body: bodyOf,
    row: { id: 'ruleId', edition: rule.edition, shown: { span: rule.span, winterCarry: rule.winterCarry } },
    fromBody: (body) => termsOf(body as unknown as contracts.RuleRow),
    words: {
      span: { label: say.form.amount, value: (span) => spanWords(span as string | null) },
      winterCarry: {
        label: say.form.mayCarry,
        value: (carry) => (carry ? say.carry((carry as Carry).maxDays, (carry as Carry).graceDays) : ''),
      },
    },
    onSaved: () => {
      toast({ text: say.saved });
      onClose();
    },
  });
  return (
    <Sheet open onClose={onClose} title={whom(rule)}>
      <Form {...form.props}>
        <p>{say.form.bases[rule.basis]}</p>
        <TermsFields basis={rule.basis} terms={form.values} onChange={form.set} />
        <Preview change={{ command: 'editRule', body: bodyOf(form.values) }} />
        <Submit form={form} others={<RetireRule rule={rule} onDone={onClose} />}>
          {say.form.save}
        </Submit>
      </Form>
    </Sheet>
  );
}

function RetireRule({ rule, onDone }: { rule: contracts.RuleRow; onDone: () => void }) {
  const { rules: say } = useMessages();
  const retire = useCommand('potLife.retireRule', { title: say.retire });
  const add = useCommand('potLife.addRule', { title: say.add });
  const { basis, span, lotId, plantId, containerId, genus, rootHabit, winterCarry, note } = rule;
  // A retired rule stays retired: undoing makes the same rule anew.
  const putBack = () =>
    void add
      .send({
        ruleId: newId(),
        basis,
        span,
        reach: { lotId, plantId, containerId, genus, rootHabit },
        winterCarry,
        note,
      })
      .then(() => toast({ text: say.saved }), tellRefused);
  const takeOut = () =>
    void retire.send({ ruleId: rule.id }).then(() => {
      toast({ text: say.retired, undo: putBack });
      onDone();
    }, tellRefused);
  return (
    <Button busy={retire.state === 'sending' || retire.state === 'waiting'} onClick={takeOut}>
      {say.retire}
    </Button>
  );
}
