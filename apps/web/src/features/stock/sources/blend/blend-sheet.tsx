/** Blends seed of one plant by weight into a new source; shares and what becomes mixed are said before it is done. */
import { keepPreviousData, useQuery } from '@tanstack/react-query';
import { sources as contracts } from '@rootclock/contracts';
import { useNavigate } from '@tanstack/react-router';
import { useState } from 'react';
import { trpc } from '../../../../lib/api/index.ts';
import { Submit, useCommandForm } from '../../../../lib/form/index.ts';
import { useFormat } from '../../../../lib/format/index.ts';
import { newId } from '../../../../lib/ids.ts';
import { useCommand } from '../../../../lib/outbox/index.ts';
import { paths } from '../../../../lib/paths.ts';
import { Read } from '../../../../lib/read/index.ts';
import { useMessages } from '../../../../messages/index.ts';
import { toast } from '../../../../ui/feedback/index.ts';
import { NumberField } from '../../../../ui/fields/index.ts';
import { Form } from '../../../../ui/form/index.ts';
import { Sheet } from '../../../../ui/overlay/index.ts';
import { DayAndNote } from '../../lots/fields/day-note.tsx';
import { useLastDay } from '../../lots/fields/last.ts';
import type { SeedSheetProps } from '../store/seed-sheet.ts';
import { type BlendChoice, mixedOf } from './mixed-of.ts';

export function BlendSheet({ source, onClose }: SeedSheetProps) {
  const { seed } = useMessages();
  const query = useQuery({
    ...trpc.sources.listSources.queryOptions({
      plantId: source.plantId,
      sort: 'grams',
      descending: true,
      perPage: 200,
    }),
    placeholderData: keepPreviousData,
  });
  return (
    <Sheet open onClose={onClose} title={`${seed.blendTitle}: ${source.scientificName}`}>
      <Read query={query}>
        {({ rows }) => {
          const stored = rows.filter(({ gramsLeft }) => (gramsLeft ?? 0) > 0);
          return stored.length < 2 ? <p>{seed.blendNone}</p> : <BlendForm stored={stored} onClose={onClose} />;
        }}
      </Read>
    </Sheet>
  );
}

function BlendForm({ stored, onClose }: { stored: readonly BlendChoice[]; onClose: () => void }) {
  const { seed } = useMessages();
  const { measures, numbers } = useFormat();
  const [day, keepDay] = useLastDay();
  const [blendId] = useState(newId);
  const navigate = useNavigate();
  const chosen = (grams: Record<string, number | null>) =>
    stored.filter(({ sourceId }) => (grams[sourceId] ?? null) !== null);
  const form = useCommandForm({
    command: useCommand('sources.blendSources', { title: seed.blendTitle }),
    contract: contracts.blendSources,
    initial: { grams: {} as Record<string, number | null>, happenedOn: day, note: '' },
    body: ({ grams, ...values }) => ({
      sourceId: blendId,
      parts: chosen(grams).map(({ sourceId }) => ({ sourceId, grams: grams[sourceId] })),
      ...values,
    }),
    onSaved: ({ code, grams }, { happenedOn }) => {
      keepDay(happenedOn);
      toast({ text: seed.blendSaved(code, measures.seedWeight(grams)) });
      onClose();
      void navigate({ to: paths.source(blendId) });
    },
  });
  const parts = chosen(form.values.grams);
  const sum = parts.reduce((all, { sourceId }) => all + (form.values.grams[sourceId] ?? 0), 0);
  const mixed = mixedOf(parts);
  return (
    <Form {...form.props}>
      <p>{seed.blendHint}</p>
      {stored.map((row) => {
        const grams = form.values.grams[row.sourceId] ?? null;
        const at = parts.indexOf(row);
        return (
          <NumberField
            key={row.sourceId}
            name={at < 0 ? `unused.${row.sourceId}` : `parts.${at}.grams`}
            label={row.code}
            hint={[
              seed.partLeft(
                [row.provenance, row.seedZone].filter(Boolean).join(', '),
                measures.seedWeight(row.gramsLeft ?? 0),
              ),
              grams !== null && sum > 0 && grams > 0 && seed.partShare(numbers.part(grams / sum)),
            ]
              .filter(Boolean)
              .join(' · ')}
            unit={seed.gramsUnit}
            decimal
            optional
            value={grams}
            onChange={(next) => form.set(({ grams: before }) => ({ grams: { ...before, [row.sourceId]: next } }))}
          />
        );
      })}
      <p role="status">
        {parts.length > 1 && sum > 0 && (
          <>
            {seed.blendSum(measures.seedWeight(sum))}{' '}
            {mixed.length === 0
              ? seed.blendKept
              : seed.blendMixed(mixed.map((field) => seed.blendFields[field]).join(', '))}
          </>
        )}
      </p>
      <DayAndNote day={form.field('happenedOn')} note={form.field('note')} />
      <Submit form={form}>{seed.blendSave}</Submit>
    </Form>
  );
}
