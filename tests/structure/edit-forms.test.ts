// A form that edits a row in place says which row it is and at what edition it was read; what is sent without a form names the edition itself.
import { expect, test } from 'vitest';
import { operations } from '../../apps/server/src/features/operations.ts';
import type { Operation } from '../../apps/server/src/trpc/operation.ts';
import { allFiles, textOf } from './repository.ts';

const editing = Object.entries(operations).flatMap(([feature, named]) =>
  Object.entries(named as Record<string, Operation>)
    .filter(([, operation]) => operation.kind === 'command' && operation.edits !== undefined)
    .map(([name]) => `${feature}.${name}`),
);

const web = allFiles('.tsx')
  .filter((file) => file.startsWith('apps/web/src/features/'))
  .map((file) => ({ file, text: textOf(file) }));
/** Spelled out, or put together from the feature and the command's name. */
const uses = (text: string, path: string) => {
  const [feature = '', name = ''] = path.split('.');
  return (
    new RegExp(`use(Direct)?Command\\([^;]{0,200}'${path}'`).test(text) ||
    (text.includes(`\`${feature}.\${`) && text.includes(`'${name}'`))
  );
};

test.each(editing)('%s is sent by forms that say what they had read', (path) => {
  const forms = web.filter(({ text }) => uses(text, path));
  expect(forms.length).toBeGreaterThan(0);
  expect(forms.filter(({ text }) => !/\brow: \{\s+id: '\w+',\s+edition/.test(text)).map(({ file }) => file)).toEqual(
    [],
  );
});

test('a contract of an editing command takes the edition, and no other does', () => {
  const takes = Object.entries(operations).flatMap(([feature, named]) =>
    Object.entries(named as Record<string, Operation>)
      .filter(([, { input }]) => fieldsOf(input).includes('edition'))
      .map(([name]) => `${feature}.${name}`),
  );
  expect(takes.sort()).toEqual(editing.sort());
});

interface Shape {
  shape?: object;
  options?: unknown[];
}

/** The fields that a contract knows; of a choice of shapes those of the first. */
function fieldsOf(schema: unknown): string[] {
  const { shape, options } = (schema as { _zod: { def: Shape } })._zod.def;
  return shape ? Object.keys(shape) : options ? fieldsOf(options[0]) : [];
}
