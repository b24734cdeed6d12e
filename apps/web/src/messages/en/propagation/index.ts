import { form } from './form.ts';
import { list } from './list.ts';
import { page, story } from './page.ts';
import { sheet } from './sheet.ts';
import { stages } from './stages.ts';
import { bands, causes, countKinds, methods, plants, unitNames, units } from './words.ts';

export const propagation = {
  title: 'Propagation',
  lead: 'What is sown, stuck and divided, and what has come of it.',
  start: 'Start a batch',
  bands, causes, countKinds, methods, plants, unitNames, units,
  form, list, page, sheet, stages, story,
};
