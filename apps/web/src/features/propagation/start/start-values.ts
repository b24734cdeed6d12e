import { type BatchUnit, cellsOfTrays, type PropagationMethod, UNITS_FOR_METHOD } from '@rootclock/domain';
import type { PickedContainer } from '../../plants/container-picker.tsx';
import type { PickedPlant } from '../../plants/plant-picker.tsx';
import type { StartProtocol } from '../yields/suggestion.ts';

/** What is typed and chosen to start a batch. */
export interface StartValues {
  plantId: PickedPlant | null;
  sourceId: string;
  protocolVersionId: string;
  stagePosition: string;
  method: PropagationMethod;
  unit: BatchUnit;
  containerId: (PickedContainer & { cells: number | null; volumeMl: number | null }) | null;
  inTrays: boolean;
  trays: number | null;
  units: number | null;
  seedsSown: number | null;
  seedGrams: number | null;
  packsId: string;
  packs: number | null;
  placeId: string;
  happenedOn: string;
  targetContainerId: (PickedContainer & { volumeMl?: number | null }) | null;
  cautiousUnits: number | null;
  usualUnits: number | null;
  readyOn: string;
  /** Whether the yield and the ready day are what the record suggests, and follow it; typing in them ends that. */
  fromRecord: boolean;
  note: string;
}

export const EMPTY_START: Omit<StartValues, 'placeId' | 'happenedOn'> = {
  plantId: null,
  sourceId: '',
  protocolVersionId: '',
  stagePosition: '',
  method: 'seed',
  unit: 'cell',
  containerId: null,
  inTrays: true,
  trays: null,
  units: null,
  seedsSown: null,
  seedGrams: null,
  packsId: '',
  packs: null,
  targetContainerId: null,
  cautiousUnits: null,
  usualUnits: null,
  readyOn: '',
  fromRecord: true,
  note: '',
};

/** Whole trays can be counted where the tray says how many cells it has. */
export const countsTrays = (values: Pick<StartValues, 'unit' | 'inTrays' | 'containerId'>): boolean =>
  values.unit === 'cell' && values.inTrays && (values.containerId?.cells ?? 0) > 0;

const isCount = (value: number | null): value is number =>
  value !== null && Number.isInteger(value) && value > 0 && value <= 10_000_000;

/** Units as they will be booked; null while they cannot be reckoned. */
export function unitsOf(
  values: Pick<StartValues, 'unit' | 'inTrays' | 'containerId' | 'trays' | 'units'>,
): number | null {
  if (!countsTrays(values)) return isCount(values.units) ? values.units : null;
  const cells = values.containerId?.cells ?? 0;
  return isCount(values.trays) && values.trays * cells <= 10_000_000 ? cellsOfTrays(values.trays, cells) : null;
}

/** The place of the stage in which seed out of packs begins: the one after stratification. */
export const afterPacks = (protocol: Pick<StartProtocol, 'stages'>): number =>
  Math.min(protocol.stages.findIndex(({ kind }) => kind === 'stratification') + 1, protocol.stages.length - 1);

/** What choosing a protocol fills in: all that it says. What was typed of numbers stays. */
export function underProtocol(protocol: StartProtocol, fromPacks: boolean): Partial<StartValues> {
  const { startContainer, targetContainer } = protocol;
  return {
    protocolVersionId: protocol.versionId,
    method: protocol.method,
    unit: protocol.startUnit,
    stagePosition: String(fromPacks ? afterPacks(protocol) : 0),
    fromRecord: true,
    containerId: startContainer && {
      id: startContainer.id,
      name: startContainer.name,
      cells: startContainer.cells,
      volumeMl: startContainer.volumeMl,
    },
    targetContainerId: targetContainer && {
      id: targetContainer.id,
      name: targetContainer.name,
      volumeMl: targetContainer.volumeMl,
    },
  };
}

/** What changing the method leaves of the rest: the unit if it still fits, and no protocol of another method. */
export function byMethod(method: PropagationMethod, values: Pick<StartValues, 'unit'>): Partial<StartValues> {
  const [usual = 'cell'] = UNITS_FOR_METHOD[method];
  return {
    method,
    protocolVersionId: '',
    stagePosition: '',
    ...(UNITS_FOR_METHOD[method].includes(values.unit) ? {} : { unit: usual, containerId: null }),
    ...(method === 'seed' ? {} : { packsId: '', packs: null }),
  };
}

/** The body as it is sent; the contract judges what is missing. */
export function startBody(batchId: string, values: StartValues) {
  const { method, unit, happenedOn, note } = values;
  const isSeed = method === 'seed';
  return {
    batchId,
    plantId: values.plantId?.id,
    sourceId: values.sourceId || undefined,
    method,
    unit,
    containerId: values.containerId?.id ?? null,
    protocolVersionId: values.protocolVersionId || null,
    stagePosition: values.protocolVersionId && values.stagePosition !== '' ? Number(values.stagePosition) : null,
    // An empty number of trays must be said beside the trays, not beside the units that are not asked for.
    ...(countsTrays(values) ? { trays: values.trays ?? Number.NaN } : { units: values.units }),
    seedsSown: isSeed ? values.seedsSown : null,
    seedGrams: isSeed ? values.seedGrams : null,
    fromPacks: isSeed && values.packsId ? { batchId: values.packsId, units: values.packs ?? 0 } : null,
    placeId: values.placeId || undefined,
    happenedOn,
    targetContainerId: values.targetContainerId?.id ?? null,
    cautiousUnits: values.cautiousUnits ?? 0,
    usualUnits: values.usualUnits,
    readyOn: values.readyOn || null,
    note,
  };
}
