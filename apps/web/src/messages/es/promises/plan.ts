import type { plan as english } from '../../en/promises/plan.ts';

export const plan: typeof english = {
  page: 'Las promesas se están calculando de nuevo después de lo anotado. Mientras tanto nadie recibe nada nuevo.',
  answer: 'Las promesas se están calculando de nuevo después de lo anotado. Mire otra vez antes de prometer algo.',
};
