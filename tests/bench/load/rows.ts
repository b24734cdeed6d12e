// The rows of a family beside its entries: lots, batches, what came with them, what was seen and done to them.
import type { Batch } from './beginning.ts';
import type { Sheets } from './copy.ts';
import type { Held } from './ending.ts';
import type { Family } from './family.ts';
import type { Grounds } from './grounds.ts';
import { type Ledger, written } from './ledger.ts';

export class FamilyRows {
  private readonly nurseryId: string;
  private readonly lot;
  private readonly batch;
  private readonly batchCount;
  private readonly intake;
  private readonly hold;
  private readonly treatment;
  private readonly observation;

  constructor(
    sheets: Sheets,
    private readonly ledger: Ledger,
    private readonly grounds: Grounds,
  ) {
    this.nurseryId = grounds.nurseryId;
    this.lot = sheets.open(
      'lot',
      `nursery_id, id, code, plant_id, source_id, container_id, created_entry_id, potted_on, confined_on, container_on, ready_on, root_checked_on,
      plant_by_on, plant_by_state, limit_on, closed_on`,
    );
    this.batch = sheets.open(
      'batch',
      'nursery_id, id, code, plant_id, source_id, created_entry_id, method, unit, container_id, started_on, seeds_sown, confined_on, container_on, emerged_units, emerged_on, closed_on',
    );
    this.batchCount = sheets.open(
      'batch_count',
      'nursery_id, id, batch_id, entry_id, counted_on, count_kind, emerged_units, unexplained_units',
    );
    this.intake = sheets.open(
      'intake',
      'nursery_id, lot_id, entry_id, kind, form, arrived_on, arrived_precision, invoiced_units, received_units',
    );
    this.hold = sheets.open('hold', 'nursery_id, id, lot_id, reason, entry_id, held_on');
    this.treatment = sheets.open('treatment', 'nursery_id, id, entry_id, product, applicator, treated_at');
    this.observation = sheets.open('observation', 'nursery_id, id, entry_id, kind, result');
  }

  write(family: Family, batch: Batch | null, holds: Held[]): void {
    for (const lot of family.lots) this.writeLot(family, lot);
    if (batch) this.writeBatch(family, batch);
    for (const { lotId, entryId, day } of holds)
      this.hold(this.nurseryId, entryId, lotId, 'inspector', entryId, written(day));
    for (const { id, kind, day } of family.observed) {
      if (kind === 'observe') this.observation(this.nurseryId, id, id, 'bloom', null);
      else this.treatment(this.nurseryId, id, id, 'insecticidal soap', 'Bench helper', `${written(day)} 12:00:00+00`);
    }
  }

  private writeLot({ plant, sourceId, plan }: Family, lot: Family['lots'][number]): void {
    const potted = written(lot.pottedDay);
    const readyDay = lot.pottedDay + 60;
    // The clocks of closed lots stand as they last stood; those of living ones are reckoned by the server when all is loaded.
    const limit = plan.live ? null : written(lot.pottedDay + 365);
    this.lot(
      this.nurseryId,
      lot.id,
      this.grounds.code(plant.code, lot.pottedDay, plan.live),
      plant.id,
      sourceId,
      lot.containerId,
      lot.createdEntryId,
      potted,
      potted,
      potted,
      written(readyDay),
      readyDay < plan.endDay ? written(readyDay) : null,
      limit,
      limit ? 'limit-only' : 'unlimited',
      limit,
      lot.closedDay === null ? null : written(lot.closedDay),
    );
    if (lot.intake)
      this.intake(
        this.nurseryId,
        lot.id,
        lot.createdEntryId,
        lot.intake,
        lot.intake === 'bought' ? 'plugs' : 'pots',
        potted,
        'day',
        lot.intake === 'bought' ? lot.receivedUnits : null,
        lot.receivedUnits,
      );
    this.ledger.close(lot.accounts.values());
  }

  private writeBatch({ plant, sourceId, plan }: Family, batch: Batch): void {
    const emerged = written(batch.emergedDay);
    const began = batch.accounts.reduce((sum, { units }) => sum + units, batch.emergedUnits);
    this.batch(
      this.nurseryId,
      batch.id,
      this.grounds.code(plant.code, batch.startedDay, plan.live),
      plant.id,
      sourceId,
      batch.createdEntryId,
      'seed',
      'cell',
      this.grounds.trayId,
      written(batch.startedDay),
      began * 2,
      emerged,
      emerged,
      batch.emergedUnits,
      emerged,
      batch.closedDay === null ? null : written(batch.closedDay),
    );
    this.batchCount(
      this.nurseryId,
      batch.countEntryId,
      batch.id,
      batch.countEntryId,
      emerged,
      'counted',
      batch.emergedUnits,
      batch.unexplainedUnits,
    );
    this.ledger.close(batch.accounts);
  }
}
