import type { ContainerKind, EstablishmentMeans, HandlingRule, RootHabit } from '@rootclock/domain';

export const rootHabits: Record<RootHabit, string> = {
  taproot: 'taproot',
  fibrous: 'fibrous roots',
  rhizome: 'rhizomes',
  tuber: 'tuber or corm',
  woody: 'woody roots',
};

export const handling: Record<HandlingRule, string> = {
  'leave-root-ball-intact': 'Leave the root ball whole: a broken taproot can kill the plant.',
  'may-loosen-root-ball': 'The root ball may be loosened.',
  'may-divide': 'May be divided.',
  'no-spray-host': 'Caterpillars feed on it: no spray and no soap.',
  'keep-crown-clear': 'Keep compost and mulch off the crown.',
  'no-compost': 'No compost in the planting hole.',
  'protect-from-browse': 'Protect it from rabbits and deer.',
  'keep-from-livestock': 'Never beside livestock or hay.',
  'wear-gloves': 'Wear gloves: its sap irritates the skin and harms the eye.',
  'plant-shallow': 'Plant it shallow.',
};

export const containerKinds: Record<ContainerKind, string> = {
  tray: 'tray',
  pot: 'pot',
  flat: 'flat or bundle',
  ground: 'in the ground',
};

export const means: Record<EstablishmentMeans, string> = {
  native: 'native',
  nativeReintroduced: 'native, brought back',
  introduced: 'introduced',
  introducedAssistedColonisation: 'introduced to save it',
  vagrant: 'vagrant',
  uncertain: 'uncertain',
  nativeEndemic: 'native nowhere else',
};
