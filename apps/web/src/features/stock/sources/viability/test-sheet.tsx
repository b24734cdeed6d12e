/** A viability test, replicate by replicate; what its tolerance says stands below while it is typed. */
import { sources as contracts } from '@rootclock/contracts';
import { VIABILITY_METHODS, viabilityOf, type ViabilityMethod } from '@rootclock/domain';
import { useState } from 'react';
import { useSession } from '../../../../lib/api/index.ts';
import { Submit, useCommandForm } from '../../../../lib/form/index.ts';
import { useFormat } from '../../../../lib/format/index.ts';
import { newId } from '../../../../lib/ids.ts';
import { useCommand } from '../../../../lib/outbox/index.ts';
import { useMessages } from '../../../../messages/index.ts';
import { Button } from '../../../../ui/action/index.ts';
import { toast } from '../../../../ui/feedback/index.ts';
import { DateField, NumberField, RadioField, TextArea } from '../../../../ui/fields/index.ts';
import { Form } from '../../../../ui/form/index.ts';
import { Sheet } from '../../../../ui/overlay/index.ts';
import { useLastDay } from '../../lots/fields/last.ts';
import type { SeedSheetProps } from '../store/seed-sheet.ts';
import './viability.css';

const MOST_REPLICATES = 16;

export function TestSheet({ source, onClose }: SeedSheetProps) {
  const { seed } = useMessages();
  const { numbers } = useFormat();
  const { today } = useSession();
  const [day, keepDay] = useLastDay();
  const [testId] = useState(newId);
  const title = `${seed.recordTest}: ${source.code}`;
  const form = useCommandForm({
    command: useCommand('sources.recordViabilityTest', { title }),
    contract: contracts.recordViabilityTest,
    initial: {
      testedOn: day,
      method: 'germination' as ViabilityMethod,
      seedsPerReplicate: 100 as number | null,
      replicates: [null, null, null, null] as (number | null)[],
      hardShare: null as number | null,
      dormantShare: null as number | null,
      note: '',
    },
    body: ({ hardShare, dormantShare, ...values }) => ({
      testId,
      sourceId: source.sourceId,
      ...values,
      hardShare: (hardShare ?? 0) / 100,
      dormantShare: (dormantShare ?? 0) / 100,
    }),
    onSaved: ({ meanShare, toRepeat }, { testedOn }) => {
      keepDay(testedOn);
      toast({
        text: toRepeat ? seed.testSavedRepeat(numbers.share(meanShare)) : seed.testSaved(numbers.share(meanShare)),
      });
      onClose();
    },
  });
  const { replicates, method } = form.values;
  const change = (at: number, value: number | null) =>
    form.set(({ replicates: before }) => ({ replicates: before.map((each, index) => (index === at ? value : each)) }));
  return (
    <Sheet open onClose={onClose} title={title}>
      <Form {...form.props}>
        <DateField label={seed.testedOn} max={today} {...form.field('testedOn')} />
        <RadioField
          label={seed.method}
          hint={seed.methodHint[method]}
          look="segments"
          {...form.field('method')}
          choices={VIABILITY_METHODS.map((value) => ({ value, label: seed.methods[value] }))}
        />
        <NumberField label={seed.seedsPerReplicate} {...form.field('seedsPerReplicate')} />
        <div className="replicates">
          {replicates.map((value, at) => (
            // A replicate has no other name than its number.
            <NumberField
              key={at}
              name={`replicates.${at}`}
              label={seed.replicate(at + 1)}
              value={value}
              onChange={(next) => change(at, next)}
            />
          ))}
        </div>
        <div className="row">
          {replicates.length < MOST_REPLICATES && (
            <Button onClick={() => form.set({ replicates: [...replicates, null] })}>{seed.addReplicate}</Button>
          )}
          {replicates.length > 1 && (
            <Button onClick={() => form.set({ replicates: replicates.slice(0, -1) })}>{seed.removeReplicate}</Button>
          )}
        </div>
        <p role="status">
          <Agreement replicates={replicates} seeds={form.values.seedsPerReplicate} />
        </p>
        <NumberField label={seed.hard} unit="%" decimal optional hint={seed.hardHint} {...form.field('hardShare')} />
        <NumberField
          label={seed.dormant}
          unit="%"
          decimal
          optional
          hint={seed.dormantHint}
          {...form.field('dormantShare')}
        />
        <TextArea label={seed.note} optional rows={2} {...form.field('note')} />
        <Submit form={form}>{seed.testSave}</Submit>
      </Form>
    </Sheet>
  );
}

/** Says nothing until every replicate is counted. */
function Agreement({ replicates, seeds }: { replicates: readonly (number | null)[]; seeds: number | null }) {
  const { seed } = useMessages();
  const { numbers } = useFormat();
  const counted = replicates.filter(
    (each): each is number => each !== null && Number.isInteger(each) && each >= 0 && each <= (seeds ?? 0),
  );
  if (seeds === null || !(seeds > 0) || counted.length < replicates.length) return null;
  const mean = numbers.share(counted.reduce((sum, each) => sum + each, 0) / (counted.length * seeds));
  if (seeds !== 100) return seed.toleranceNone(mean);
  const { rangePercent, tolerancePercent } = viabilityOf(counted);
  if (tolerancePercent === null) return seed.toleranceNone(mean);
  return rangePercent > tolerancePercent ? (
    <strong>{seed.toleranceBroken(rangePercent, tolerancePercent)}</strong>
  ) : (
    seed.toleranceSaid(mean, rangePercent, tolerancePercent)
  );
}
