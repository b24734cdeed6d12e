import { referenceId } from '../../features/plants/reference-load.ts';
import type { Stage } from '../stage.ts';

interface Revision {
  code: string;
  on: string;
  changeNote: string;
  /** New figures of single stages, days as short, usual, long. */
  stages: { kind: string; days?: readonly [number, number, number]; share?: number }[];
}

/** What an invented nursery learned in its first two years and wrote into its protocols. */
const revisionsFrom = (year: number): Revision[] => [
  {
    code: 'MOFI',
    on: `${year}-11-16`,
    changeNote: 'Up in ten days on the warm bench, and fewer than the printed figure.',
    stages: [{ kind: 'emergence', days: [7, 10, 24], share: 0.8 }],
  },
  {
    code: 'ASTU',
    on: `${year + 1}-01-18`,
    changeNote: 'Plugs stood longer than we had thought before their roots held.',
    stages: [{ kind: 'growing-on', days: [70, 100, 140] }],
  },
  {
    code: 'MOFI',
    on: `${year + 1}-12-06`,
    changeNote: 'Two seeds to a cell leave too few empty ones to be worth a third.',
    stages: [
      { kind: 'emergence', days: [7, 11, 21], share: 0.82 },
      { kind: 'hardening', share: 0.97 },
    ],
  },
];

export function planProtocols(stage: Stage, firstYear: number): void {
  for (const revision of revisionsFrom(firstYear)) stage.onWorkday(revision.on, () => revise(stage, revision));
}

async function revise(stage: Stage, { code, changeNote, stages }: Revision): Promise<void> {
  const grower = stage.as('grower').propagation;
  const protocolId = referenceId(stage.nurseryId, 'protocol', `${code}/seed`);
  const { version } = await grower.readProtocol({ protocolId });
  await grower.reviseProtocol(
    stage.sent({
      protocolId,
      versionId: stage.chance.id(),
      basedOnVersionId: version.versionId,
      changeNote,
      startUnit: version.startUnit,
      startContainerId: version.startContainer?.id ?? null,
      targetContainerId: version.targetContainer?.id ?? null,
      seedsPerCell: version.seedsPerCell,
      texts: version.texts,
      stages: version.stages.map(({ position: _position, containerName: _name, ...before }) => {
        const learned = stages.find(({ kind }) => kind === before.kind);
        const [shortDays, usualDays, longDays] = learned?.days ?? [before.shortDays, before.usualDays, before.longDays];
        return {
          ...before,
          shortDays,
          usualDays,
          longDays,
          share: learned?.share ?? before.share,
          ...(learned?.days ? { durationStanding: 'own setting' as const, durationSource: null } : {}),
          ...(learned?.share ? { shareStanding: 'own setting' as const, shareSource: null } : {}),
        };
      }),
    }),
  );
}
