import { plural } from '../words.ts';
import { plants } from './words.ts';

/** Lo que puede dar una tanda: lo anotado y lo que sugiere el registro. */
export const yields = {
  title: 'Lo que puede dar',
  stored: 'Anotado para esta tanda',
  cautious: 'Prudente (se puede prometer)',
  usual: 'Usual',
  ready: 'Lista',
  notSaid: 'nadie lo ha dicho',
  suggested: 'Lo que sugiere ahora el registro',
  suggestion: (cautious: number, usual: number) => `${plants(cautious)} con prudencia, ${plants(usual)} por lo usual`,
  suggestedReady: (on: string, late: string) =>
    on === late ? `lista el ${on}` : `lista el ${on}, el ${late} según las duraciones largas`,
  onlyReady: (on: string, late: string) =>
    `Según sus etapas está lista el ${on}, el ${late} según las duraciones largas. Cuántas serán se sabrá al contar semillas o plantas.`,
  from: {
    units: (count: string) => `Calculado con ${count} en pie.`,
    seeds: (count: string) => `Calculado con ${count} semillas.`,
    count: (count: string) => `Calculado con ${count} vivas según el último recuento.`,
  },
  confidence: (share: string) => `La cifra prudente se cumple en el ${share} de los casos.`,
  takeOver: 'Tomarlo',
  taken: (cautious: number, usual: number) =>
    `Anotado: ${plants(cautious)} con prudencia, ${plants(usual)} por lo usual.`,
  asStored: 'Es lo que ya está anotado.',
  stage: 'Etapa por delante',
  passes: 'Pasa',
  restsOn: 'Se apoya en',
  counts: (passed: string, tried: string, batches: number) =>
    `${passed} de ${tried}, ${plural(batches, { one: '# tanda', other: '# tandas' })}`,
  figureOnly: 'solo la cifra del protocolo',
  withFigure: (share: string) => `el protocolo dice ${share}`,
  offered: 'Solo se ofrece: nada cambia hasta que alguien lo tome.',
};
