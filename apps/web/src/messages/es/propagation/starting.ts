import type { BatchUnit } from '@rootclock/domain';
import { plural } from '../words.ts';
import { plants, unitNames } from './words.ts';

/** Palabras del formulario que empieza una tanda, más allá de sus campos. */
export const starting = {
  protocol: 'Protocolo',
  noProtocol: 'sin protocolo',
  protocolHint: (count: number) =>
    plural(count, {
      one: 'Hay # para esta planta. Rellena lo demás.',
      other: 'Hay # para esta planta. Uno rellena lo demás.',
    }),
  protocolName: (method: string, label: string, version: number) =>
    `${method.replace(/^./, (letter) => letter.toUpperCase())}${label ? `, ${label}` : ''}, versión ${version}`,
  stage: 'Empieza con',
  stageHint: 'Una etapa posterior si lo anterior ya está hecho, como con semilla comprada estratificada.',
  stagesTitle: (ready: string) => `Sus etapas, lista hacia el ${ready}`,
  packs: 'Semilla de paquetes',
  packsHint: 'Paquetes en estratificación de esta planta y origen.',
  noPacks: 'no de paquetes',
  packsOf: (code: string, count: string, place: string) => `${code}: ${count} en ${place}`,
  packsUsed: 'Paquetes gastados',
  packsUsedHint: 'Ninguno mientras los paquetes sigan en uso.',
  grams: 'Semilla tomada',
  gramsHint: {
    left: (weight: string) => `Quedan ${weight} de este origen; se descuenta.`,
    unknown: 'Nadie ha pesado aún la reserva de este origen.',
    packs: 'Solo se anota: la semilla de los paquetes ya salió de la reserva.',
  },
  leftAfter: (weight: string) => `Quedan ${weight} en la reserva.`,
  reckon: '¿Cuántos para las plantas que quiero?',
  wanted: 'Plantas que quiero',
  sure: 'Con qué seguridad',
  needs: 'Empezar',
  needsUnits: (count: string, unit: BatchUnit) => `${count} ${unitNames[unit]}`,
  needsSeeds: (count: string) => `${count} semillas`,
  needsTrays: (trays: number, cells: string) =>
    plural(trays, { one: `# bandeja, ${cells} alvéolos`, other: `# bandejas, ${cells} alvéolos` }),
  seeds: 'Semillas',
  seedsOf: (count: string, perCell: number) =>
    plural(perCell, { one: `${count}, # por alvéolo`, other: `${count}, # por alvéolo` }),
  medium: 'Sustrato',
  mediumOf: (cells: string | null, pots: string | null) =>
    [cells && `${cells} para los alvéolos`, pots && `${pots} para las macetas`].filter(Boolean).join(', '),
  mediumHint: 'Se supone que se asienta un 15 %.',
  ready: 'Lista',
  potLife: 'Después en la maceta',
  potLifeUntil: (on: string) => `hasta el ${on} como mucho`,
  potLifeNone: 'cuanto quiera: ninguna regla la limita',
  restsOn: (batches: number) =>
    plural(batches, {
      one: 'Lo que pasa se apoya en # tanda propia y en las cifras del protocolo.',
      other: 'Lo que pasa se apoya en # tandas propias y en las cifras del protocolo.',
      zero: 'Lo que pasa se apoya solo en las cifras del protocolo.',
    }),
  incomplete: 'Anote cuántas plantas quiere y con qué seguridad (1 a 99 %), y lo demás se calcula.',
  never: (share: string) =>
    `Según lo que se sabe, ninguna cantidad da tantas plantas en el ${share} de los casos. Pida menos certeza o mire las proporciones del protocolo.`,
  take: 'Tomar estas cifras',
  taken: 'Las cifras están en el formulario.',
  seedCalculator: '¿Cuánta semilla y cómo quedará la bandeja?',
  protocolFigure: 'Esta semilla nunca pasó una prueba de germinación: la nascencia es la del protocolo.',
  fromRecord: (batches: number) =>
    plural(batches, {
      one: 'Rellenado con el registro: # tanda y el protocolo.',
      other: 'Rellenado con el registro: # tandas y el protocolo.',
      zero: 'Rellenado con el protocolo: el registro aún no tiene ninguna tanda.',
    }),
  suggests: (cautious: number, usual: number, ready: string) =>
    `El registro sugiere ${plants(cautious)} con prudencia, ${usual} por lo usual, lista el ${ready}.`,
  useSuggestion: 'Usar lo que sugiere el registro',
};
