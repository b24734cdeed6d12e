import { demand } from './demand.ts';
import { outlook } from './outlook.ts';
import { plan } from './plan.ts';

export const planning = {
  label: 'Planning',
  tabs: { plan: 'What to start', demand: 'Expected demand', outlook: 'Supply and demand' },
  plan,
  demand,
  outlook,
};
