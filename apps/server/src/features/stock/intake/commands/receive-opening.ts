import { stock } from '@rootclock/contracts';
import { type ContainerKind, GROWERS, type IntakeForm, openingClocks } from '@rootclock/domain';
import { refuse } from '../../../../refusal.ts';
import { command } from '../../../../trpc/operation.ts';
import { settleSources } from '../../../sources/settle.ts';
import { openEntry } from '../../ledger/post.ts';
import { lookUpRows, zipped } from '../look-up.ts';
import { takeIn } from '../take-in.ts';

const FORM_IN: Record<ContainerKind, IntakeForm> = { pot: 'pots', tray: 'plugs', flat: 'plugs', ground: 'in-ground' };

/** Stock that stood here when the records began: a whole list in one entry, so that a wrong list is taken back in one go. */
export const receiveOpening = command({
  name: 'receiveOpening',
  input: stock.receiveOpening,
  roles: GROWERS,
  run: async (context, { happenedOn, rows, note }) => {
    const entryId = await openEntry(context, { kind: 'opening', happenedOn, note, details: { rows: rows.length } });
    const grounds = await lookUpRows(context, rows, 'rows');
    const wanted = zipped(rows, grounds).map(([row, { plant }], index) => ({
      plant,
      sourceId: row.sourceId ?? null,
      field: `rows.${index}.sourceId`,
      words: {
        kind: row.sourceKind ?? ('unknown' as const),
        provenance: row.provenance ?? '',
        seedZone: row.seedZone ?? null,
        origin: 'unknown' as const,
        vendor: null,
        vendorLot: null,
        pesticideStatement: null,
      },
    }));
    const sources = await settleSources(context, wanted);
    const incoming = zipped(zipped(rows, grounds), sources).map(([[row, about], source], index) => {
      const clocks = openingClocks({
        since: row.since ?? null,
        confinedSince: row.confinedSince ?? null,
        countedOn: happenedOn,
        gatheredOn: source.gatheredOn,
        containerKind: about.container.kind,
      });
      if (clocks.pottedOn > happenedOn)
        refuse('day-after-intake', { day: clocks.pottedOn, intakeOn: happenedOn }, `rows.${index}.since`);
      return { ...row, form: FORM_IN[about.container.kind], invoicedUnits: null, sownOn: null, about, source, clocks };
    });
    return { entryId, lots: await takeIn(context, entryId, { kind: 'opening', happenedOn }, incoming) };
  },
});
