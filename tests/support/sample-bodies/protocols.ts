import type { SampleBodies, SampleIds } from './bodies.ts';

type Named =
  | 'addProtocol'
  | 'reviseProtocol'
  | 'retireProtocol'
  | 'restoreProtocol'
  | 'loadReferenceProtocols'
  | 'listProtocols'
  | 'readProtocol';

const stage = { shortDays: 7, usualDays: 14, longDays: 30, share: 0.8 };

/** What a version of a protocol from seed says, its words marked. */
export const sampleContent = ({ mark, containerId, trayId }: Pick<SampleIds, 'mark' | 'containerId' | 'trayId'>) => ({
  startUnit: 'cell' as const,
  startContainerId: trayId,
  targetContainerId: containerId,
  seedsPerCell: 2,
  stages: [
    {
      kind: 'stratification' as const,
      ...stage,
      durationStanding: 'confirmed' as const,
      durationSource: `${mark} trial`,
      temperatureLowC: 1,
      temperatureHighC: 5,
      medium: `${mark} sand`,
    },
    {
      kind: 'sowing' as const,
      shortDays: 0,
      usualDays: 0,
      longDays: 0,
      share: 1,
      season: { fromMd: '02-15', toMd: '07-15' },
      light: 'surface-light' as const,
      depthMm: 0,
    },
    { kind: 'emergence' as const, ...stage, note: mark },
    { kind: 'growing-on' as const, ...stage, rests: true, containerId: trayId },
  ],
  texts: { collection: `${mark} seed`, references: mark },
});

export const protocolBodies: Pick<SampleBodies<'propagation'>, Named> = {
  addProtocol: (ids) => [
    {
      protocolId: ids.made('protocolId'),
      versionId: ids.made('versionId'),
      plantId: ids.otherPlantId,
      method: 'seed',
      label: ids.mark,
      ...sampleContent(ids),
      changeNote: ids.mark,
    },
  ],
  reviseProtocol: (ids) => [
    {
      protocolId: ids.protocolId,
      versionId: ids.made('versionId'),
      basedOnVersionId: ids.versionId,
      ...sampleContent(ids),
      seedsPerCell: 3,
      changeNote: `${ids.mark} again`,
    },
  ],
  retireProtocol: (ids) => [{ protocolId: ids.protocolId }],
  restoreProtocol: (ids) => [{ protocolId: ids.retiredProtocolId }],
  loadReferenceProtocols: () => [{}],
  listProtocols: (ids) => [{}, { text: ids.mark }, { plantId: ids.plantId, have: 'with' }, { retired: true }],
  readProtocol: (ids) => [{ protocolId: ids.protocolId }, { protocolId: ids.protocolId, versionId: ids.versionId }],
};
