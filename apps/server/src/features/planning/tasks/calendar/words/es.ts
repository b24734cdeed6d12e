import type { StageKind } from '@rootclock/domain';
import type { CalendarWords } from './words.ts';

const STAGES: Record<StageKind, string> = {
  scarification: 'la escarificación',
  stratification: 'el frío húmedo',
  sowing: 'la siembra',
  sticking: 'el estaquillado',
  emergence: 'la emergencia',
  rooting: 'el enraizamiento',
  'pricking-out': 'el repicado',
  'growing-on': 'el crecimiento',
  hardening: 'el endurecimiento',
  'root-check': 'la revisión del cepellón',
  ready: 'listas',
};
const plants = (units: number | null) => (units === 1 ? '1 planta' : `${units ?? 0} plantas`);
const outOfPots = (units: number | null, code: string) =>
  units === 1 ? `1 planta de ${code} debe salir de la maceta` : `${plants(units)} de ${code} deben salir de la maceta`;

export const es: CalendarWords = {
  calendarName: (nursery) => `${nursery}: tareas`,
  title: {
    pull: ({ units, subject }) => `Sacar ${plants(units)} para ${subject.code}`,
    'plant-out': ({ units, subject }) => `Plantar ${plants(units)} de ${subject.code}`,
    'hand-over': ({ units, subject }) => `Entregar ${plants(units)} de ${subject.code}`,
    'stage-late': ({ subject, details }) =>
      `Mirar ${subject.code}: ${details.stage ? STAGES[details.stage] : 'su etapa'} tarda más de lo debido`,
    'ask-not-yet-up': ({ units, subject }) => `Buscar ${plants(units)} de ${subject.code} que aún no habían brotado`,
    'take-out-of-cold': ({ subject, details }) =>
      details.next === 'sowing' ? `Sacar ${subject.code} del frío y sembrar` : `Sacar ${subject.code} del frío`,
    sow: ({ subject }) => `Sembrar ${subject.code}`,
    stick: ({ subject }) => `Estaquillar ${subject.code}`,
    count: ({ subject, details }) =>
      details.stage === 'rooting'
        ? `Contar lo enraizado de ${subject.code}`
        : `Contar lo que ha salido de ${subject.code}`,
    'prick-out': ({ subject }) => `Repicar ${subject.code}`,
    pot: ({ subject }) => `Pasar a maceta ${subject.code}`,
    harden: ({ subject }) => `Endurecer ${subject.code}`,
    'check-root-ball': ({ subject }) => `Revisar los cepellones de ${subject.code}`,
    'leave-the-pot': ({ units, unit, subject }) =>
      unit === 'plant' ? outOfPots(units, subject.code) : `${subject.code} debe salir de los alvéolos`,
    cover: ({ subject }) => `Cubrir ${subject.code} para el invierno`,
    'vole-bait': ({ subject }) => `Cebo contra topillos en ${subject.code}`,
    uncover: ({ subject }) => `Destapar ${subject.code}`,
    'follow-up': ({ subject }) => `Ver cómo van las plantas de ${subject.code}`,
    'test-to-repeat': ({ subject }) => `Repetir la prueba de viabilidad de ${subject.code}`,
  },
  late: (day) => `Con retraso después del ${day}.`,
  dormant: (names) =>
    `Aplazado hasta que brote la última: ${names.join(', ')} puede parecer muerta antes y solo estar en reposo.`,
  voleBait:
    'El cebo es veneno: la etiqueta es ley. Solo con licencia, en portacebos cerrados, fuera del alcance de mascotas, ganado y fauna silvestre. Respete las normas locales.',
};
