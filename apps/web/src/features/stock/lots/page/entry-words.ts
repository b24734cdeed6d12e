/** An entry of a lot's story in words: what it was, and how many went from where to where. */
import type { HoldReason, LossCause, ObservationKind, RootBallResult } from '@rootclock/domain';
import type { Messages } from '../../../../messages/index.ts';
import type { LotEntry } from '../lot-data.ts';

type Words = Messages['lots'];
type End = LotEntry['movements'][number]['from'];

function endWords(end: End, lotId: string, { story, words }: Words): string {
  if (end.kind === 'outside') return words.outsides[end.outside as keyof typeof words.outsides];
  if (end.kind === 'staged') return story.order(end.order);
  if (end.batchId) return story.lotAt(story.batch(end.code), end.place);
  return end.lotId === lotId ? end.place : story.lotAt(end.code, end.place);
}

function kindWords(entry: LotEntry, { story, words }: Words): string {
  const { conversion, lifted, bed } = entry.details as {
    conversion?: keyof typeof story.conversions;
    lifted?: boolean;
    bed?: boolean;
  };
  if (conversion) return story.conversions[conversion];
  if (lifted) return story.lifted;
  if (bed) return story.planted;
  return words.entries[entry.kind as keyof typeof words.entries] ?? entry.kind;
}

function detailWords(entry: LotEntry, { story, words }: Words): string | null {
  const details = entry.details as { countedUnits?: number; expectedUnits?: number; party?: string; kind?: string };
  if (entry.kind === 'lose' && entry.cause) return words.causes[entry.cause as LossCause] ?? null;
  if ((entry.kind === 'hold' || entry.kind === 'release') && entry.cause)
    return words.holds[entry.cause as HoldReason] ?? null;
  if (entry.spring) return story.spring(entry.spring.upUnits, entry.spring.deadUnits, entry.spring.notUpUnits);
  if (entry.kind === 'count' && details.countedUnits !== undefined)
    return story.counted(details.countedUnits, details.expectedUnits ?? 0);
  if (details.party) return story.party(details.party);
  if (entry.treatment) return entry.treatment.product;
  if (!entry.observation) return null;
  const { kind, result, amount } = entry.observation;
  const seen = kind === 'root-ball' ? words.rootBalls[result as RootBallResult] : result;
  return [
    words.observations[kind as ObservationKind],
    seen,
    amount === null ? null : `${amount}${kind === 'height' ? ' mm' : ''}`,
  ]
    .filter(Boolean)
    .join(', ');
}

/** "Lost, rot" or "Taken back: Moved". */
export function entryTitle(entry: LotEntry, words: Words): string {
  if (entry.kind === 'reverse')
    return words.story.takesBack(
      words.words.entries[(entry.details as { kind?: keyof typeof words.words.entries }).kind ?? 'reverse'],
    );
  const detail = detailWords(entry, words);
  return detail ? `${kindWords(entry, words)}: ${detail}` : kindWords(entry, words);
}

/** One line a movement: "15 from B3 to ASTU-26-014 at Y1". */
export function movementLines(entry: LotEntry, lotId: string, words: Words): string[] {
  return entry.movements.map(({ from, to, fromUnits, toUnits }) => {
    const [start, end] = [endWords(from, lotId, words), endWords(to, lotId, words)];
    return fromUnits === toUnits
      ? words.story.moved(fromUnits, start, end)
      : words.story.became(fromUnits, start, toUnits, end);
  });
}
