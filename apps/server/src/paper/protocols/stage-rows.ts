import type { propagation } from '@rootclock/contracts';
import type { Standing } from '@rootclock/domain';
import type { Block, Run } from '../blocks.ts';
import { cutText } from '../fit.ts';
import type { PaperMeasures } from './measures.ts';
import type { ProtocolWords } from './words.ts';

const plain = (text: string): Run => ({ text, face: 'plain' });
const bold = (text: string): Run => ({ text, face: 'bold' });
const row = (cells: [Run[], Run[], Run[], Run[]], space: number, ruled: boolean): Block => ({
  cells: cells.map((runs, at) => ({ runs, weight: [2, 2.4, 2.2, 4.6][at] ?? 1 })),
  scale: 0.95,
  space,
  ruled,
});

/** The stages as a table, each figure with the word it rests on and the number of its source, and the sources after it. */
export function stageBlocks(
  stages: readonly propagation.ProtocolStageRow[],
  words: ProtocolWords,
  measures: PaperMeasures,
  mostLetters: number,
): Block[] {
  const sources: string[] = [];
  const standing = (word: Standing, source: string | null): string => {
    if (source === null) return words.standings[word];
    if (!sources.includes(source)) sources.push(source);
    return `${words.standings[word]} [${sources.indexOf(source) + 1}]`;
  };
  const conditionsOf = (stage: propagation.ProtocolStageRow): string =>
    [
      measures.degrees(stage.temperatureLowC, stage.temperatureHighC),
      stage.light === '' ? '' : words.lights[stage.light],
      stage.depthMm ? words.deep(measures.depth(stage.depthMm)) : '',
      stage.medium,
      stage.containerName ?? '',
      stage.season ? words.begins(measures.monthDay(stage.season.fromMd), measures.monthDay(stage.season.toMd)) : '',
      stage.rests ? words.rests : '',
    ]
      .filter(Boolean)
      .join(', ');
  const { stage, days, share, conditions } = words.columns;
  const rows = stages.map((each) =>
    row(
      [
        [bold(words.stages[each.kind])],
        [
          plain(
            `${each.shortDays}, ${each.usualDays}, ${each.longDays} (${standing(each.durationStanding, each.durationSource)})`,
          ),
        ],
        [plain(`${measures.share(each.share)} (${standing(each.shareStanding, each.shareSource)})`)],
        [
          plain(
            [conditionsOf(each), cutText(each.note, Math.min(mostLetters, 400), words.more)].filter(Boolean).join('. '),
          ),
        ],
      ],
      0.25,
      true,
    ),
  );
  const listed = sources.map((source, at) => `[${at + 1}] ${source}`).join('; ');
  return [
    row([[bold(stage)], [bold(days)], [bold(share)], [bold(conditions)]], 1, false),
    ...rows,
    ...(listed === ''
      ? []
      : [
          {
            cells: [
              { runs: [bold(words.sources)], weight: 2 },
              { runs: [plain(cutText(listed, mostLetters, words.more))], weight: 7 },
            ],
            scale: 0.95,
            space: 0.6,
            ruled: true,
          },
        ]),
  ];
}
