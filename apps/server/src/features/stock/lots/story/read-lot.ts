import { stock } from '@rootclock/contracts';
import { daysBetween, EVERYONE, isDormant, looksDeadTooSoon, potBand, windowsFor } from '@rootclock/domain';
import { found } from '../../../../refusal.ts';
import { query } from '../../../../trpc/operation.ts';
import { loadTreatmentHistory } from '../../treatments/reads.ts';
import { loadWindows } from '../../windows-reads.ts';
import { loadLotEntries, loadLotRow } from './reads.ts';

/** Entries on the first page of a lot's story, and on each further one. */
export const ENTRIES_SHOWN = 20;

/** The whole story of a lot. What depends on today is reckoned here and never stored. */
export const readLot = query({
  name: 'readLot',
  input: stock.readLot,
  roles: EVERYONE,
  read: async (context, { lotId }) => {
    const { noticeDays, ...lot } = found(await loadLotRow(context, lotId), 'lot', 'lotId');
    const { today } = context;
    const entries = await loadLotEntries(context, lotId, null, ENTRIES_SHOWN + 1);
    const windows = await loadWindows(context);
    const treatments = await loadTreatmentHistory(context, lotId);
    const { dormantMonths, lastEmergenceMd } = lot.plant;
    const onHand = lot.standing.reduce((sum, { units }) => sum + units, 0);
    const promised = lot.promised.reduce((sum, { units }) => sum + units, 0);
    // At a quarantine place plants are there, but no supply: promises count them as little as this does.
    const supply = lot.standing.reduce((sum, { kind, units }) => (kind === 'quarantine' ? sum : sum + units), 0);
    const isHeld = lot.holds.some((hold) => hold.releasedOn === null);
    return {
      ...lot,
      today,
      units: {
        onHand,
        staged: lot.staged.reduce((sum, { units }) => sum + units, 0),
        promised,
        free: isHeld ? 0 : Math.max(0, supply - promised),
      },
      daysInPot: lot.containerOn === null ? null : Math.max(0, daysBetween(lot.containerOn, today)),
      daysConfined: lot.confinedOn === null ? null : Math.max(0, daysBetween(lot.confinedOn, today)),
      ...potBand(lot.plantByOn, today, noticeDays),
      dormant: isDormant(dormantMonths, today),
      mayBeDormant: looksDeadTooSoon({ dormantMonths, lastEmergenceMd, on: today }),
      windows: windowsFor(windows, { containerMl: lot.container.volumeMl, region: null }).ranges,
      treatments,
      entries: entries.slice(0, ENTRIES_SHOWN),
      moreEntries: entries.length > ENTRIES_SHOWN,
    };
  },
});
