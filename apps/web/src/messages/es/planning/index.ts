import type { Messages } from '../../en/index.ts';
import { demand } from './demand.ts';
import { outlook } from './outlook.ts';
import { plan } from './plan.ts';

export const planning: Messages['planning'] = {
  label: 'Planificación',
  tabs: { plan: 'Qué empezar', demand: 'Demanda esperada', outlook: 'Oferta y demanda' },
  plan,
  demand,
  outlook,
};
