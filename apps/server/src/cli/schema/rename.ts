// Gives models, fields and relations names for code, and writes the database's own name beside each that differs.
import type { Field, Model } from './models.ts';
import { camel, pascal, plural } from './naming.ts';

const bare = (type: string) => type.replace(/[?[\]]/g, '');
const mark = (type: string) => type.slice(bare(type).length);
const columnsOf = (attributes: string) => /fields: \[([^\]]*)\]/.exec(attributes)?.[1]?.split(', ');
const relationName = (attributes: string) => /@relation\("([^"]+)"/.exec(attributes)?.[1];

/** The name of a relation from the columns that carry it: `(nursery_id, from_account_id)` → `fromAccount`. */
function forwardName(columns: string[], model: Model): string {
  const own = columns.filter((column) => column !== 'nursery_id').at(-1) ?? 'nursery_id';
  const name = camel(own.replace(/_id$/, ''));
  const taken = model.fields.some(
    (field) => field.name !== own && columnsOf(field.attributes) === undefined && camel(field.name) === name,
  );
  return taken ? `${name}Row` : name;
}

interface Relation {
  from: Model;
  to: string;
  /** The engine's name, present where two models have several relations. */
  name: string | undefined;
  field: string;
}

function relationsOf(models: Model[]): Relation[] {
  return models.flatMap((from) =>
    from.fields.flatMap((field) => {
      const columns = columnsOf(field.attributes);
      if (columns === undefined) return [];
      return [{ from, to: bare(field.type), name: relationName(field.attributes), field: forwardName(columns, from) }];
    }),
  );
}

/** Where one model points at another in several ways, the other end says in which: `movementsAsFromAccount`. */
function backName(relation: Relation, field: Field, relations: Relation[]): string {
  const alike = relations.filter((other) => other.from === relation.from && other.to === relation.to);
  const one = camel(relation.from.name);
  const name = mark(field.type) === '[]' ? plural(one) : one;
  const itself = relation.from.name === relation.to;
  return alike.length > 1 || itself ? `${name}As${pascal(relation.field.replace(/[A-Z]/g, '_$&'))}` : name;
}

// Quoted text (names of indexes, conditions of partial ones) is the database's own and stays.
const outsideQuotes = (text: string, change: (part: string) => string) =>
  text
    .split(/("(?:[^"\\]|\\.)*")/)
    .map((part, index) => (index % 2 === 0 ? change(part) : part))
    .join('');

const renameColumns = (text: string) =>
  outsideQuotes(text, (part) => part.replace(/\b[a-z]+(_[a-z0-9]+)+\b/g, (column) => camel(column)));

/** The block line's column list is the only part that names columns. */
const renameBlock = (line: string) => line.replace(/\[[^\]]*\]/, renameColumns);

function renameField(field: Field, model: Model, models: Set<string>, relations: Relation[]): Field {
  const target = bare(field.type);
  if (!models.has(target)) {
    const name = camel(field.name);
    const map = name === field.name ? '' : `@map("${field.name}")`;
    return { name, type: field.type, attributes: [map, field.attributes].filter((part) => part !== '').join(' ') };
  }
  const columns = columnsOf(field.attributes);
  const name = relationName(field.attributes);
  const relation = relations.find((each) =>
    columns === undefined
      ? each.from.name === target && each.to === model.name && each.name === name
      : each.from === model && each.field === forwardName(columns, model),
  );
  if (relation === undefined) throw new Error(`${model.name}.${field.name} is an end of no relation`);
  const title = pascal(relation.from.name) + pascal(relation.field.replace(/[A-Z]/g, '_$&'));
  const attributes = renameColumns(field.attributes);
  return {
    name: columns === undefined ? backName(relation, field, relations) : relation.field,
    type: pascal(target) + mark(field.type),
    attributes: name === undefined ? attributes : attributes.replace(`"${name}"`, `"${title}"`),
  };
}

/** Renames all models of a schema together: a relation's two ends lie in two models. */
export function renameModels(models: Model[]): Model[] {
  const names = new Set(models.map((model) => model.name));
  const relations = relationsOf(models);
  return models.map((model) => {
    const name = pascal(model.name);
    const map = name === model.name ? [] : [`@@map("${model.name}")`];
    return {
      name,
      fields: model.fields.map((field) => renameField(field, model, names, relations)),
      block: [...model.block.map(renameBlock), ...map],
    };
  });
}
