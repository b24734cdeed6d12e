import type { planning } from '@rootclock/contracts';
import type { PlanFor, PlanItem, PlanLine, ProductionPlan } from '@rootclock/domain';
import type { LoadedPlan } from '../facts/load-plan.ts';

/** Names of plant and container of an item. */
export function namesOf(
  { plants, containers }: Pick<LoadedPlan, 'plants' | 'containers'>,
  { plantId, containerId }: PlanItem,
): planning.ItemNames {
  const plant = plants.get(plantId);
  const container = containers.get(containerId);
  return {
    plantId,
    plantCode: plant?.code ?? '',
    scientificName: plant?.scientificName ?? '',
    vernacularName: plant?.vernacularName ?? '',
    containerId,
    containerCode: container?.code ?? '',
    containerName: container?.name ?? '',
  };
}

function forWhom({ lines, expected }: LoadedPlan, { demandId, ...wanted }: PlanFor): planning.ForWhom {
  const line = lines.get(demandId);
  return {
    ...wanted,
    demandId,
    orderId: line?.orderId ?? null,
    orderCode: line?.orderCode ?? null,
    clientName: line?.clientName ?? null,
    note: expected.get(demandId)?.note ?? '',
  };
}

/** What starting this batch sends, all but the batch's id, place and day. Whole trays of cells are sent as trays. */
function startOf(line: PlanLine): planning.PlannedStart {
  const inTrays = line.unit === 'cell' && line.trays !== null;
  return {
    plantId: line.plantId,
    sourceId: line.sourceId,
    method: line.method,
    unit: line.unit,
    containerId: line.startContainerId,
    units: inTrays ? null : line.units,
    trays: inTrays ? line.trays : null,
    seedsSown: line.seeds,
    targetContainerId: line.containerId,
    cautiousUnits: line.cautiousPlants,
    usualUnits: line.usualPlants,
    readyOn: line.readyOn,
    protocolVersionId: line.versionId,
    seedGrams: line.grams === null ? null : Math.max(0.001, Math.ceil(line.grams * 1000) / 1000),
  };
}

function rowOf(loaded: LoadedPlan, line: PlanLine): planning.PlanRow {
  const { wantedFor, ...rest } = line;
  const source = loaded.sources.get(line.sourceId);
  const sownInto = loaded.containers.get(line.sownIntoId ?? '');
  return {
    ...rest,
    ...namesOf(loaded, line),
    sourceCode: source?.code ?? '',
    sourceWords: [source?.provenance, source?.seedZone].filter(Boolean).join(' · '),
    sownIntoName: sownInto?.name ?? null,
    cellsPerTray: sownInto?.kind === 'tray' ? sownInto.cells : null,
    start: startOf(line),
    forWhom: wantedFor.map((wanted) => forWhom(loaded, wanted)),
  };
}

/** The plan in the words of its screen. */
export function planAnswer(loaded: LoadedPlan, plan: ProductionPlan): planning.PlanAnswer {
  const { facts, settings } = loaded;
  return {
    today: facts.today,
    confidence: facts.confidence,
    usualConfidence: settings.confidence,
    currency: settings.currency,
    neutralValue: facts.neutralValue,
    lines: plan.lines.map((line) => rowOf(loaded, line)),
    tooLate: plan.tooLate.map((line) => rowOf(loaded, line)),
    gaps: plan.gaps.map(({ demandId, kind, on, units, unitValue, ...gap }) => ({
      ...gap,
      ...namesOf(loaded, gap),
      units,
      forWhom: forWhom(loaded, { demandId, kind, on, units, servedUnits: 0, unitValue }),
    })),
    weeks: plan.weeks,
    capacityCm2: plan.capacityCm2,
    missingUnits: plan.missingUnits,
    servedUnits: plan.servedUnits,
    within: plan.within,
    counts: {
      orderLines: facts.demands.filter(({ rank }) => rank !== null).length,
      expected: loaded.expected.size,
      supplies: facts.supplies.length,
    },
  };
}
