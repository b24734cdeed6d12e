import type { BeginningBasis, StageKind, StageState } from '@rootclock/domain';
import { plural } from '../words.ts';

const names: Record<StageKind, string> = {
  scarification: 'Escarificado',
  stratification: 'Estratificación fría y húmeda',
  sowing: 'Siembra',
  sticking: 'Estaquillado',
  emergence: 'Nascencia',
  rooting: 'Enraizado',
  'pricking-out': 'Repicado',
  'growing-on': 'Crianza',
  hardening: 'Endurecimiento',
  'root-check': 'Revisión del cepellón',
  ready: 'Lista para salir',
};
const days = (count: number): string => plural(count, { one: '# día', other: '# días' });

export const stages = {
  names,
  title: 'Etapas',
  protocol: (label: string, version: number) => `${label || 'Protocolo usual'}, versión ${version}`,
  olderVersion: 'Hay una versión más nueva; esta tanda conserva aquella con la que empezó.',
  states: { done: 'hecha', current: 'ahora', late: 'demasiado larga', coming: 'por venir' } satisfies Record<
    StageState,
    string
  >,
  begun: (on: string) => `empezó el ${on}`,
  basis: {
    start: 'con el inicio',
    said: null,
    count: 'con el primer recuento',
    potting: 'con el primer paso a maceta',
    act: 'con el paso anterior',
  } satisfies Record<BeginningBasis, string | null>,
  passedOver: 'sin día anotado',
  shouldBegin: (on: string, from: string) => `debe empezar el ${on}, ${from}`,
  shouldHave: (on: string) => `debía empezar el ${on}`,
  due: (on: string, from: string) => `el paso siguiente toca el ${on}, ${from}`,
  lateSince: (stage: string, count: number) =>
    `${stage}: dura ${days(count)} más de lo que tardan nueve tandas de cada diez.`,
  lateHint: 'Empiece la etapa siguiente, guarde la tanda para un segundo invierno o ciérrela.',
  takes: (least: number, usual: number, most: number) =>
    most === 0
      ? 'no lleva tiempo'
      : least === most
        ? `dura ${days(most)}`
        : `dura de ${least} a ${days(most)}, lo usual ${usual}`,
  beginToday: (stage: string) => `${stage}: empezar hoy`,
  beginOther: 'Empezar una etapa otro día',
  beginTitle: 'Empezar una etapa',
  beginWhich: 'Etapa',
  beginHint: 'Las etapas anteriores sin día cuentan como hechas. Decirlo otra vez corrige el día.',
  beginSave: 'Empezar la etapa',
  began: (stage: string) => `${stage}: ha empezado.`,
  none: 'Empezó sin protocolo, así que no tiene etapas.',
  temperature: (low: string | null, high: string | null) =>
    low === null ? `hasta ${high}` : high === null || low === high ? `a ${low}` : `de ${low} a ${high}`,
};
