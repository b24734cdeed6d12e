import type { ContainerKind, EstablishmentMeans, HandlingRule, RootHabit } from '@rootclock/domain';

export const rootHabits: Record<RootHabit, string> = {
  taproot: 'raíz pivotante',
  fibrous: 'raíces fibrosas',
  rhizome: 'rizomas',
  tuber: 'tubérculo o cormo',
  woody: 'raíces leñosas',
};

export const handling: Record<HandlingRule, string> = {
  'leave-root-ball-intact': 'Deje entero el cepellón: una raíz pivotante rota puede matar la planta.',
  'may-loosen-root-ball': 'El cepellón se puede aflojar.',
  'may-divide': 'Se puede dividir.',
  'no-spray-host': 'Las orugas comen de ella: no rocíe nada, tampoco jabón.',
  'keep-crown-clear': 'Mantenga la corona libre de compost y acolchado.',
  'no-compost': 'Sin compost en el hoyo.',
  'protect-from-browse': 'Protéjala de conejos y venados.',
  'keep-from-livestock': 'Nunca junto a ganado o heno.',
  'wear-gloves': 'Use guantes: su savia irrita la piel y daña los ojos.',
  'plant-shallow': 'Plántela a poca profundidad.',
};

export const containerKinds: Record<ContainerKind, string> = {
  tray: 'bandeja',
  pot: 'maceta',
  flat: 'caja o manojo',
  ground: 'en el suelo',
};

export const means: Record<EstablishmentMeans, string> = {
  native: 'nativa',
  nativeReintroduced: 'nativa, reintroducida',
  introduced: 'introducida',
  introducedAssistedColonisation: 'introducida para salvarla',
  vagrant: 'ocasional',
  uncertain: 'incierto',
  nativeEndemic: 'nativa solo aquí',
};
