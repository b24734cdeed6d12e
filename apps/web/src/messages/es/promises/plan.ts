import type { plan as english } from '../../en/promises/plan.ts';

export const plan: typeof english = {
  page: 'Las promesas se están calculando de nuevo por la última anotación. Mientras tanto no se prometen plantas nuevas.',
  answer: 'Las promesas se están calculando de nuevo por la última anotación. Vuelva a mirar antes de prometer algo.',
};
