import type { ContainerKind, HandlingRule, RootHabit } from '@rootclock/domain';
import type { plants as english } from '../en/plants.ts';
import { plural } from './words.ts';

const rootHabits: Record<RootHabit, string> = { taproot: 'raíz pivotante', fibrous: 'raíces fibrosas', rhizome: 'rizomas', tuber: 'tubérculo o cormo', woody: 'raíces leñosas' };

const handling: Record<HandlingRule, string> = {
  'leave-root-ball-intact': 'Deje entero el cepellón: una raíz pivotante rota puede matar la planta.',
  'may-loosen-root-ball': 'El cepellón se puede aflojar.',
  'may-divide': 'Se puede dividir.',
  'no-spray-host': 'Las orugas comen de ella: no rocíe nada, tampoco jabón.',
  'keep-crown-clear': 'Mantenga la corona libre de compost y acolchado.',
  'no-compost': 'Sin compost en el hoyo.',
  'protect-from-browse': 'Protéjala de conejos y venados.',
  'keep-from-livestock': 'Nunca junto a ganado o heno.',
  'wear-gloves': 'Use guantes: su savia irrita la piel y daña los ojos.',
  'plant-shallow': 'Plántela a poca profundidad.',
};

const containerKinds: Record<ContainerKind, string> = { tray: 'bandeja', pot: 'maceta', flat: 'caja o manojo', ground: 'en el suelo' };

export const plants: typeof english = {
  rootHabits,
  handling,
  containerKinds,
  picker: {
    label: 'Planta',
    placeholder: 'Nombre científico o común',
    ambiguous: (text, count) => plural(count, { one: `«${text}» puede ser # planta de aquí. Elíjala por su nombre científico.`, other: `«${text}» puede ser # plantas de aquí. Elija por el nombre científico.` }),
    nearMiss: (name) => `Quizás quiere decir ${name}`,
    calledHere: (name, code) => `${name} · ${code}`,
    unknown: (text) => `Ninguna planta de aquí se llama «${text}». Puede estar retirada o no añadida todavía.`,
  },
  containerPicker: { label: 'Recipiente', placeholder: 'Nombre, código o tamaño', cells: (count) => plural(count, { one: '# celda', other: '# celdas' }), deep: (depth) => `${depth} de hondo` },
};
