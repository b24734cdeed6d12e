/** Plants and what they grow in: what is known of them, and how a person finds and changes it. */
import { plural } from '../words.ts';
import { containers } from './containers.ts';
import { facts } from './facts.ts';
import { form } from './form.ts';
import { list } from './list.ts';
import { page } from './page.ts';
import { containerKinds, handling, means, rootHabits } from './words.ts';

export const plants = {
  rootHabits,
  handling,
  containerKinds,
  means,
  facts,
  tabs: {
    label: 'Plants and what they grow by',
    plants: 'Plants',
    containers: 'Containers',
    rules: 'Pot-life rules',
    windows: 'Planting windows',
    substitutes: 'What may stand in',
  },
  picker: {
    label: 'Plant',
    placeholder: 'Scientific or common name',
    ambiguous: (text: string, count: number) =>
      plural(count, {
        one: `“${text}” could mean # plant here. Choose it by its scientific name.`,
        other: `“${text}” could mean # plants here. Choose by the scientific name.`,
      }),
    oneOf: (text: string, count: number, code: string) => `one of ${count} called “${text}” · ${code}`,
    nearMiss: (name: string) => `Perhaps you mean ${name}`,
    calledHere: (name: string, code: string) => (name === '' ? code : `${name} · ${code}`),
    unknown: (text: string) => `No plant here is called “${text}”. It may be retired, or not added yet.`,
  },
  containerPicker: {
    label: 'Container',
    placeholder: 'Name, code or size',
    cells: (count: number) => plural(count, { one: '# cell', other: '# cells' }),
    deep: (depth: string) => `${depth} deep`,
  },
  list,
  page,
  form,
  containers,
};
