import type { plants as english } from '../../en/plants/index.ts';
import { plural } from '../words.ts';
import { containers } from './containers.ts';
import { facts } from './facts.ts';
import { form } from './form.ts';
import { list } from './list.ts';
import { page } from './page.ts';
import { containerKinds, handling, means, rootHabits } from './words.ts';

export const plants: typeof english = {
  rootHabits,
  handling,
  containerKinds,
  means,
  facts,
  tabs: {
    label: 'Las plantas y sus reglas',
    plants: 'Plantas',
    containers: 'Recipientes',
    rules: 'Reglas de maceta',
    windows: 'Épocas de plantación',
    substitutes: 'Qué puede sustituir',
  },
  picker: {
    label: 'Planta',
    placeholder: 'Nombre científico o común',
    ambiguous: (text, count) =>
      plural(count, {
        one: `«${text}» puede ser # planta de aquí. Elíjala por su nombre científico.`,
        other: `«${text}» puede ser # plantas de aquí. Elija por el nombre científico.`,
      }),
    oneOf: (text, count, code) => `una de ${count} que se llaman «${text}» · ${code}`,
    nearMiss: (name) => `Quizás quiere decir ${name}`,
    calledHere: (name, code) => (name === '' ? code : `${name} · ${code}`),
    unknown: (text) => `Ninguna planta de aquí se llama «${text}». Puede estar retirada o no añadida todavía.`,
  },
  containerPicker: {
    label: 'Recipiente',
    placeholder: 'Nombre, código o tamaño',
    cells: (count) => plural(count, { one: '# celda', other: '# celdas' }),
    deep: (depth) => `${depth} de hondo`,
  },
  list,
  page,
  form,
  containers,
};
