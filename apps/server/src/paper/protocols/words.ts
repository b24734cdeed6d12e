import type { propagation } from '@rootclock/contracts';
import type { BatchUnit, PropagationMethod, StageKind, StageLight, Standing } from '@rootclock/domain';

/** The words of the printed protocol in one language. */
export interface ProtocolWords {
  title: string;
  methods: Record<PropagationMethod, string>;
  version: (number: number, day: string) => string;
  by: (name: string) => string;
  retired: string;
  startIn: string;
  target: string;
  units: Record<BatchUnit, string>;
  seedsPerCell: (seeds: number) => string;
  totalTime: string;
  days: (usual: number, short: number, long: number) => string;
  waits: string;
  ready: (of: 'seed' | 'piece', ready: string) => string;
  readyOfCells: (seeds: number, ready: string) => string;
  columns: { stage: string; days: string; share: string; conditions: string };
  stages: Record<StageKind, string>;
  lights: Record<Exclude<StageLight, ''>, string>;
  standings: Record<Standing, string>;
  begins: (from: string, to: string) => string;
  rests: string;
  deep: (depth: string) => string;
  texts: Record<propagation.ProtocolText, string>;
  more: string;
  cutNote: string;
  sources: string;
}

const en: ProtocolWords = {
  title: 'Propagation protocol',
  methods: {
    seed: 'from seed',
    cutting: 'from stem cuttings',
    'root-cutting': 'from root cuttings',
    division: 'by division',
  },
  version: (number, day) => `version ${number} of ${day}`,
  by: (name) => `written by ${name}`,
  retired: 'retired: nothing new is started under it',
  startIn: 'Started in',
  target: 'Target container',
  units: { cell: 'cells', tray: 'trays', piece: 'pieces', pack: 'packs' },
  seedsPerCell: (seeds) => `${seeds} ${seeds === 1 ? 'seed' : 'seeds'} to a cell`,
  totalTime: 'Total time to harvest',
  days: (usual, short, long) => (short === long ? `${usual} days` : `${usual} days (${short} to ${long})`),
  waits: 'More pass where a stage waits for its season or rests while the plant is dormant.',
  ready: (of, ready) => `Of 100 ${of === 'seed' ? 'seeds' : 'pieces'} about ${ready} get ready.`,
  readyOfCells: (seeds, ready) => `Of 100 cells with ${seeds} seeds each about ${ready} get ready.`,
  columns: { stage: 'Stage', days: 'Days: short, usual, long', share: 'Passes', conditions: 'Conditions' },
  stages: {
    scarification: 'Scarification',
    stratification: 'Cold and moist',
    sowing: 'Sowing',
    sticking: 'Sticking',
    emergence: 'Emergence',
    rooting: 'Rooting',
    'pricking-out': 'Pricking out',
    'growing-on': 'Growing on',
    hardening: 'Hardening',
    'root-check': 'Root-ball check',
    ready: 'Ready',
  },
  lights: { dark: 'dark', 'surface-light': 'light on the seed', shade: 'shade', 'full-light': 'full light' },
  standings: {
    confirmed: 'from a published source',
    'confirmed-vendor': 'from a seller',
    derived: 'worked out',
    'common practice': 'common practice',
    'from memory': 'from memory',
    'own setting': 'own setting',
    assumed: 'assumed',
    'not found': 'not found',
  },
  begins: (from, to) => `begins ${from} to ${to}`,
  rests: 'rests while dormant',
  deep: (depth) => `${depth} deep`,
  texts: {
    collection: 'Propagule collection',
    processing: 'Propagule processing',
    prePlanting: 'Pre-planting treatments',
    growingArea: 'Growing area preparation',
    establishment: 'Establishment phase',
    activeGrowth: 'Active growth phase',
    hardening: 'Hardening phase',
    harvest: 'Harvest',
    storage: 'Storage',
    otherNotes: 'Other notes and cautions',
    references: 'References',
  },
  more: '(continued on screen)',
  cutNote: 'Not all of it fits one page: what ends in “continued on screen” goes on there.',
  sources: 'Sources of the figures',
};

const es: ProtocolWords = {
  title: 'Protocolo de propagación',
  methods: {
    seed: 'por semilla',
    cutting: 'por esquejes de tallo',
    'root-cutting': 'por esquejes de raíz',
    division: 'por división',
  },
  version: (number, day) => `versión ${number} del ${day}`,
  by: (name) => `escrita por ${name}`,
  retired: 'retirado: no se empieza nada nuevo con él',
  startIn: 'Se empieza en',
  target: 'Envase final',
  units: { cell: 'alvéolos', tray: 'bandejas', piece: 'trozos', pack: 'paquetes' },
  seedsPerCell: (seeds) => `${seeds} ${seeds === 1 ? 'semilla' : 'semillas'} por alvéolo`,
  totalTime: 'Tiempo total hasta la salida',
  days: (usual, short, long) => (short === long ? `${usual} días` : `${usual} días (${short} a ${long})`),
  waits: 'Pasan más donde una etapa espera su temporada o descansa con la planta.',
  ready: (of, ready) => `De 100 ${of === 'seed' ? 'semillas' : 'trozos'} salen listas unas ${ready}.`,
  readyOfCells: (seeds, ready) => `De 100 alvéolos con ${seeds} semillas cada uno salen listos unos ${ready}.`,
  columns: { stage: 'Etapa', days: 'Días: corta, usual, larga', share: 'Pasan', conditions: 'Condiciones' },
  stages: {
    scarification: 'Escarificado',
    stratification: 'Frío húmedo',
    sowing: 'Siembra',
    sticking: 'Estaquillado',
    emergence: 'Nascencia',
    rooting: 'Enraizado',
    'pricking-out': 'Repicado',
    'growing-on': 'Crianza',
    hardening: 'Endurecimiento',
    'root-check': 'Revisión del cepellón',
    ready: 'Lista',
  },
  lights: { dark: 'a oscuras', 'surface-light': 'luz sobre la semilla', shade: 'sombra', 'full-light': 'plena luz' },
  standings: {
    confirmed: 'de una fuente publicada',
    'confirmed-vendor': 'según un vendedor',
    derived: 'calculado',
    'common practice': 'práctica común',
    'from memory': 'de memoria',
    'own setting': 'ajuste propio',
    assumed: 'supuesto',
    'not found': 'no se encontró',
  },
  begins: (from, to) => `empieza del ${from} al ${to}`,
  rests: 'descansa en reposo',
  deep: (depth) => `a ${depth}`,
  texts: {
    collection: 'Recolección',
    processing: 'Procesado',
    prePlanting: 'Tratamientos previos',
    growingArea: 'Preparación del lugar',
    establishment: 'Fase de establecimiento',
    activeGrowth: 'Fase de crecimiento activo',
    hardening: 'Fase de endurecimiento',
    harvest: 'Salida',
    storage: 'Conservación',
    otherNotes: 'Otras notas y precauciones',
    references: 'Referencias',
  },
  more: '(sigue en pantalla)',
  cutNote: 'No todo cabe en una página: lo que acaba en «sigue en pantalla» sigue allí.',
  sources: 'Fuentes de las cifras',
};

export const protocolWords = { en, es } as const;
export type PaperLanguage = keyof typeof protocolWords;
