import { type BatchUnit, type LossCause, STAGE_KINDS, type StageKind } from '@rootclock/domain';
import type { Messages } from '../../../messages/index.ts';
import type { StoryEntry } from '../batch-page-data.ts';

type Words = Messages['propagation'];

/** One entry of a batch's story as a sentence. */
export function storyWords(entry: StoryEntry, unit: BatchUnit, words: Words): string {
  const { story } = words;
  const units = (count: number) => words.units(count, unit);
  const cause = words.causes[(entry.cause ?? 'unknown') as LossCause] ?? entry.cause ?? '';
  const out = entry.movements.reduce((sum, movement) => sum + movement.fromUnits, 0);
  const into = entry.movements.reduce((sum, movement) => sum + movement.toUnits, 0);
  switch (entry.kind) {
    case 'start':
      return story.start(units(into));
    case 'convert': {
      const { drawnFor, drawnFrom } = entry.movements[0] ?? {};
      if (drawnFor) return out > 0 ? story.drawnFor(units(out), drawnFor) : story.drawnInUse(drawnFor);
      return drawnFrom ? story.drawnFrom(units(into), drawnFrom) : story.other;
    }
    case 'count': {
      if (entry.count) return story.count(entry.count.emergedUnits, entry.count.countKind);
      const corrected = readCorrected(entry.details['correctedUnits']);
      return corrected ? story.corrected(units(corrected.booked), units(corrected.counted)) : story.other;
    }
    case 'observe': {
      if (entry.observed?.kind === 'thinned') return story.thinned(entry.observed.amount);
      if (entry.observed)
        return [story.observed[entry.observed.kind], entry.observed.result].filter(Boolean).join(': ');
      if (entry.details['secondWinter'] === true) return story.secondWinter;
      const stage = readStage(entry.details['stage']);
      if (stage !== null) return story.stage(words.stages.names[stage]);
      const cautious = readCautious(entry.details['forecast']);
      return cautious === null ? story.other : story.forecast(cautious);
    }
    case 'lose':
      return story.lose(units(out), cause);
    case 'pot':
      return story.pot(
        units(out),
        into,
        [...new Set(entry.movements.map((movement) => movement.toLotCode))].filter(Boolean).join(', '),
      );
    case 'move':
      return story.move(units(out), entry.movements[0]?.toPlace ?? '');
    case 'close':
      return out > 0 ? story.closeRest(units(out), cause) : story.close;
    case 'reverse':
      return story.reverse;
    case 'treat':
      return story.treat;
    case 're-identify':
      return story.reIdentified;
    default:
      return story.other;
  }
}

const isRecord = (value: unknown): value is Record<string, unknown> => typeof value === 'object' && value !== null;

function readCorrected(value: unknown): { booked: number; counted: number } | null {
  return isRecord(value) && typeof value['booked'] === 'number' && typeof value['counted'] === 'number'
    ? { booked: value['booked'], counted: value['counted'] }
    : null;
}

const readStage = (value: unknown): StageKind | null =>
  isRecord(value) ? (STAGE_KINDS.find((kind) => kind === value['kind']) ?? null) : null;
const readCautious = (value: unknown): number | null =>
  isRecord(value) && typeof value['cautiousUnits'] === 'number' ? value['cautiousUnits'] : null;
