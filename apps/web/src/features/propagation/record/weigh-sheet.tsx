/** WeighSheet: how counts are weighed against protocols and how sure plans are, with what a change would do, before it is saved. */
import { propagation as contracts, readInput } from '@rootclock/contracts';
import { Submit, useCommandForm } from '../../../lib/form/index.ts';
import { useFormat } from '../../../lib/format/index.ts';
import { useCommand } from '../../../lib/outbox/index.ts';
import { useMessages } from '../../../messages/index.ts';
import { toast } from '../../../ui/feedback/index.ts';
import { NumberField } from '../../../ui/fields/index.ts';
import { Form } from '../../../ui/form/index.ts';
import { Sheet } from '../../../ui/overlay/index.ts';
import type { NurseryRecord, Settings } from './record-data.ts';
import { changesOf, startOf } from './weigh-changes.ts';
import './record.css';

const MOST_SHOWN = 6;

/** Per cent as they are typed; the fourth decimal is where typing them would show rounding. */
const asPercent = (share: number): number => Math.round(share * 1e6) / 1e4;

export function WeighSheet({ record, onClose }: { record: NurseryRecord; onClose: () => void }) {
  const { record: say } = useMessages();
  const { settings } = record;
  const form = useCommandForm({
    command: useCommand('propagation.setLearning', { title: say.weigh }),
    contract: contracts.setLearning,
    initial: {
      priorWeight: settings.priorWeight as number | null,
      evidenceLimit: settings.evidenceLimit as number | null,
      planConfidencePercent: asPercent(settings.planConfidence) as number | null,
      winterSurvivalPercent: asPercent(settings.winterSurvival) as number | null,
    },
    body: (values) => values,
    row: { id: 'nursery', edition: settings.edition },
    onSaved: () => {
      toast({ text: say.saved });
      onClose();
    },
  });
  return (
    <Sheet open onClose={onClose} title={say.weigh}>
      <Form {...form.props}>
        <p>{say.weighLead}</p>
        <NumberField
          label={say.priorWeight}
          hint={say.priorWeightHint}
          unit={say.plantsUnit}
          {...form.field('priorWeight')}
        />
        <NumberField
          label={say.evidenceLimit}
          hint={say.evidenceLimitHint}
          unit={say.plantsUnit}
          {...form.field('evidenceLimit')}
        />
        <NumberField
          decimal
          label={say.planConfidence}
          hint={say.planConfidenceHint}
          unit={say.percent}
          {...form.field('planConfidencePercent')}
        />
        <NumberField
          decimal
          label={say.winterSurvival}
          hint={say.winterSurvivalHint}
          unit={say.percent}
          {...form.field('winterSurvivalPercent')}
        />
        <Preview record={record} typed={form.values} />
        <Submit form={form}>{say.save}</Submit>
      </Form>
    </Sheet>
  );
}

/** Nothing is said of numbers that would be refused. */
function Preview({ record, typed }: { record: NurseryRecord; typed: object }) {
  const { record: say, propagation } = useMessages();
  const { numbers } = useFormat();
  const read = readInput(contracts.setLearning, typed);
  if (!read.ok) return null;
  const { planConfidencePercent, winterSurvivalPercent, priorWeight, evidenceLimit } = read.data;
  const after: Omit<Settings, 'edition' | 'winterStanding'> = {
    priorWeight,
    evidenceLimit,
    planConfidence: planConfidencePercent / 100,
    winterSurvival: winterSurvivalPercent / 100,
  };
  const names = new Map(record.plants.map(({ plantId, scientificName }) => [plantId, scientificName]));
  const changes = changesOf(record.shares, record.settings, after);
  const start = startOf(record.shares, record.settings, after);
  const units = (count: number | null) => (count === null ? say.cannot : numbers.count(count));
  return (
    <section className="record-preview" aria-label={say.preview} aria-live="polite">
      <strong>{say.preview}</strong>
      <p>{changes.length === 0 ? say.previewNone : say.previewShares(changes.length)}</p>
      {changes.length > 0 && (
        <ul>
          {changes.slice(0, MOST_SHOWN).map(({ plantId, method, label, stage, before, after: then }) => (
            <li key={`${plantId}/${method}/${label}/${stage}`}>
              {say.previewLine(
                `${names.get(plantId) ?? ''}, ${propagation.stages.names[stage]}`,
                numbers.share(before),
                numbers.share(then),
              )}
            </li>
          ))}
        </ul>
      )}
      {start && <p>{say.previewStart(names.get(start.plantId) ?? '', units(start.before), units(start.after))}</p>}
      {after.winterSurvival !== record.settings.winterSurvival && (
        <p>
          {say.previewLine(
            say.winterSurvival,
            numbers.share(record.settings.winterSurvival),
            numbers.share(after.winterSurvival),
          )}
        </p>
      )}
    </section>
  );
}
