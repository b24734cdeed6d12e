import type { why as english } from '../../en/promises/why.ts';
import { days, plural } from '../words.ts';

const leaving = (plantByOn: string | null): string =>
  plantByOn ? `con fecha límite ${days.long(plantByOn)}` : 'sin fecha límite';

export const why: typeof english = {
  title: 'Por qué estas plantas',
  turn: (before) =>
    plural(before, {
      zero: 'Este renglón se sirve antes que todos los demás que llevan tales plantas.',
      one: '# renglón que lleva tales plantas se prometió antes y se sirve primero.',
      other: '# renglones que llevan tales plantas se prometieron antes y se sirven primero.',
    }),
  reasons: {
    pinned: ({ code }) => `${code}: atado a este renglón a mano o por una lista de retiro.`,
    only: ({ code }) => `${code}: aquí no hay otra cosa que sirva a este renglón.`,
    'rest-is-promised': ({ code }) => `${code}: todo lo demás que serviría a este renglón está prometido a otros.`,
    'asked-for': ({ code, instead }) => `${code}: es lo que se pidió; ${instead?.code ?? ''} solo lo sustituiría.`,
    'leaves-first': ({ code, plantByOn, instead }) =>
      `${code} va primero: ${leaving(plantByOn)}, mientras que ${instead?.code ?? ''} está ${leaving(instead?.plantByOn ?? null)}.`,
    'as-good': ({ code, instead }) => `${code}: ${instead?.code ?? ''} está libre y serviría igual.`,
  },
  sooner: ({ code, plantByOn, orders }) =>
    `${code} debe salir antes (${leaving(plantByOn)}) y está prometido a ${orders.join(', ')}.`,
};
