import { propagation as contracts } from '@rootclock/contracts';
import { stageDifferences, type StagePart, type Standing } from '@rootclock/domain';
import { useFormat } from '../../../../lib/format/index.ts';
import { useMessages } from '../../../../messages/index.ts';
import { useConditions } from '../use-conditions.ts';

type Version = contracts.ProtocolVersionPage;
type Stage = contracts.ProtocolStageRow;

/** What a version says otherwise than the one before it, one sentence a change. */
export function useChanges(before: Version, after: Version): string[] {
  const { protocols: say, stages } = useMessages().propagation;
  const { ui } = useMessages();
  const { numbers } = useFormat();
  const conditions = useConditions();
  const standing = (word: Standing, source: string | null) =>
    source ? `${ui.standing[word]}: ${source}` : ui.standing[word];
  const valueOf: Record<StagePart, (stage: Stage) => string> = {
    days: (stage) => say.range({ short: stage.shortDays, usual: stage.usualDays, long: stage.longDays }),
    share: (stage) => numbers.share(stage.share),
    season: conditions.season,
    rests: (stage) => (stage.rests ? say.page.yes : say.page.no),
    temperature: conditions.temperature,
    light: conditions.light,
    depth: conditions.depth,
    medium: (stage) => stage.medium,
    container: (stage) => stage.containerName ?? '',
    note: (stage) => stage.note,
    'duration-standing': (stage) => standing(stage.durationStanding, stage.durationSource),
    'share-standing': (stage) => standing(stage.shareStanding, stage.shareSource),
  };
  const ofStages = stageDifferences(before.stages, after.stages).flatMap(({ kind, before: was, after: is, parts }) => {
    const name = stages.names[kind];
    if (!was) return [say.page.added(name)];
    if (!is) return [say.page.removed(name)];
    return parts.map((part) =>
      say.page.changed(
        name,
        say.page.parts[part],
        valueOf[part](was) || say.page.nothing,
        valueOf[part](is) || say.page.nothing,
      ),
    );
  });
  const frameOf = ({ startUnit, startContainer, targetContainer, seedsPerCell }: Version) =>
    JSON.stringify([startUnit, startContainer?.id, targetContainer?.id, seedsPerCell]);
  return [
    ...ofStages,
    ...(frameOf(before) === frameOf(after) ? [] : [say.page.frameChanged]),
    ...contracts.PROTOCOL_TEXTS.filter((field) => before.texts[field] !== after.texts[field]).map((field) =>
      say.page.textChanged(say.texts[field]),
    ),
  ];
}
