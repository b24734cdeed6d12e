import { course } from './course.ts';
import { form } from './form.ts';
import { list } from './list.ts';
import { page, story } from './page.ts';
import { protocolForm } from './protocol-form.ts';
import { protocols } from './protocols.ts';
import { sheet } from './sheet.ts';
import { stages } from './stages.ts';
import { starting } from './starting.ts';
import { yields } from './yields.ts';
import { bands, causes, countKinds, methods, plants, unitNames, units } from './words.ts';

export const propagation = {
  title: 'Propagación',
  lead: 'Lo que se sembró, se puso de esqueje o se dividió, y lo que salió de ello.',
  start: 'Empezar una tanda',
  bands,
  causes,
  countKinds,
  methods,
  plants,
  unitNames,
  units,
  form,
  list,
  page,
  course,
  protocolForm,
  protocols,
  sheet,
  stages,
  starting,
  story,
  yields,
};
