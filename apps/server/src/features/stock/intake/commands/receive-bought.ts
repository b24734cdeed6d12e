import { stock } from '@rootclock/contracts';
import { boughtClocks, earliestOfDay, FIELD } from '@rootclock/domain';
import { refuse } from '../../../../refusal.ts';
import { command } from '../../../../trpc/operation.ts';
import { settleSources } from '../../../sources/settle.ts';
import { openEntry } from '../../ledger/post.ts';
import { openHolds } from '../../lots/holding-store.ts';
import { lookUpRows, requireOpen, zipped } from '../look-up.ts';
import { takeIn } from '../take-in.ts';

/** A delivery of bought plants. What arrived is booked; what the invoice says is kept beside it, so that the difference can be claimed. */
export const receiveBought = command({
  name: 'receiveBought',
  input: stock.receiveBought,
  roles: FIELD,
  run: async (context, { happenedOn, lines, note, quarantine, ...delivery }) => {
    const vendor = delivery.vendor ?? null;
    const entryId = await openEntry(context, {
      kind: 'receive',
      happenedOn,
      note,
      details: { vendor, lines: lines.length },
    });
    const grounds = await lookUpRows(context, lines, 'lines');
    grounds.forEach(({ place }, index) => requireOpen(context, place, `lines.${index}.placeId`));
    const sources = await settleSources(
      context,
      zipped(lines, grounds).map(([line, { plant }], index) => ({
        plant,
        sourceId: line.sourceId ?? null,
        field: `lines.${index}.sourceId`,
        words: {
          kind: 'bought-plants' as const,
          provenance: line.provenance ?? '',
          seedZone: line.seedZone ?? null,
          origin: line.origin,
          vendor,
          vendorLot: line.vendorLot ?? null,
          pesticideStatement: delivery.pesticideStatement ?? null,
        },
      })),
    );
    const incoming = zipped(zipped(lines, grounds), sources).map(([[line, about], source], index) => {
      const sownOn = dayBefore(line.sown, happenedOn, `lines.${index}.sown`);
      dayBefore(line.inPotSince, happenedOn, `lines.${index}.inPotSince`);
      const clocks = boughtClocks({
        form: line.form,
        arrivedOn: happenedOn,
        sown: line.sown ?? null,
        germinationDays: line.germinationDays ?? null,
        inPotSince: line.inPotSince ?? null,
        containerKind: about.container.kind,
      });
      return {
        ...line,
        units: line.receivedUnits,
        invoicedUnits: line.invoicedUnits ?? null,
        sownOn,
        about,
        source,
        clocks,
      };
    });
    const lots = await takeIn(context, entryId, { kind: 'bought', happenedOn }, incoming);
    if (quarantine)
      await openHolds(
        context,
        entryId,
        lots.map(({ lotId }) => lotId),
        'quarantine',
        happenedOn,
      );
    return {
      entryId,
      // Received less invoiced: negative when some are missing, null without an invoice.
      lots: zipped(lots, incoming).map(([lot, { units, invoicedUnits }]) => ({
        ...lot,
        differenceUnits: invoicedUnits === null ? null : units - invoicedUnits,
      })),
    };
  },
});

/** The earliest day of what the vendor stated, which cannot lie after the arrival. */
function dayBefore(stated: string | null | undefined, arrivedOn: string, field: string): string | null {
  if (!stated) return null;
  const { earliestOn } = earliestOfDay(stated);
  if (earliestOn > arrivedOn) refuse('day-after-intake', { day: earliestOn, intakeOn: arrivedOn }, field);
  return earliestOn;
}
