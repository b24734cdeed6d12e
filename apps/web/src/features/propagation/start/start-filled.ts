import type { plants } from '@rootclock/contracts';
import type { StartAsk } from '../../../lib/paths.ts';
import type { StartChoices } from '../yields/suggestion.ts';
import { EMPTY_START, type StartValues, underProtocol } from './start-values.ts';

export interface Filling {
  ask: Partial<StartAsk>;
  /** Null where the address names no plant, or one that is not there. */
  choices: StartChoices | null;
  containers: readonly plants.ContainerRow[];
  place: string;
  day: string;
  today: string;
}

/** The form as the address asks for it. What it says goes before what the protocol says; a yield it brings is not filled in again from the record. */
export function startFilled({ ask, choices, containers, place, day, today }: Filling): StartValues {
  const asked = ask.day ?? day;
  // Nobody starts a batch tomorrow: a plan's day that is still to come is today, for whoever starts early.
  const blank: StartValues = {
    ...EMPTY_START,
    placeId: ask.placeId ?? place,
    happenedOn: asked > today ? today : asked,
  };
  if (!choices) return blank;
  const protocol = choices.protocols.find(({ versionId }) => versionId === ask.protocolVersionId) ?? null;
  const packsId = choices.packs.find(({ batchId }) => batchId === ask.packsId)?.batchId ?? '';
  const target = containers.find(({ id }) => id === ask.targetContainerId);
  const brings = ask.cautiousUnits != null || ask.usualUnits != null || ask.readyOn != null;
  return {
    ...blank,
    plantId: choices.plant,
    sourceId: ask.sourceId ?? '',
    ...(protocol ? underProtocol(protocol, packsId !== '') : {}),
    ...(protocol && ask.stagePosition != null && ask.stagePosition < protocol.stages.length
      ? { stagePosition: String(ask.stagePosition) }
      : {}),
    ...(ask.trays != null
      ? { inTrays: true, trays: ask.trays }
      : ask.units != null
        ? { inTrays: false, units: ask.units }
        : {}),
    ...(target ? { targetContainerId: { id: target.id, name: target.name, volumeMl: target.volumeMl } } : {}),
    seedsSown: ask.seedsSown ?? null,
    seedGrams: ask.seedGrams ?? null,
    packsId,
    packs: packsId ? 0 : null,
    cautiousUnits: ask.cautiousUnits ?? null,
    usualUnits: ask.usualUnits ?? null,
    readyOn: ask.readyOn ?? '',
    fromRecord: !brings,
  };
}
