// The models in a schema text as the engine writes it: one line a field, one line a block attribute.

export interface Field {
  name: string;
  /** With its mark: `lot`, `lot?` or `lot[]`. */
  type: string;
  attributes: string;
}

export interface Model {
  name: string;
  fields: Field[];
  /** `@@id`, `@@unique`, `@@index` and their like. */
  block: string[];
}

/** Reads every model of the text. The engine's comments are advice to whoever pulls a schema, and are left out. */
export function readModels(text: string): Model[] {
  return [...text.matchAll(/^model (\w+) \{\n([\s\S]*?)^\}/gm)].map(([, name, body]) => {
    const lines = (body as string).split('\n').map((line) => line.trim());
    return {
      name: name as string,
      block: lines.filter((line) => line.startsWith('@@')),
      fields: lines.flatMap((line) => {
        const parts = /^(\w+)\s+(\S+)\s*(.*)$/.exec(line);
        return parts === null
          ? []
          : [{ name: parts[1] as string, type: parts[2] as string, attributes: parts[3] as string }];
      }),
    };
  });
}

/** Writes a model with its columns aligned. */
export function writeModel({ name, fields, block }: Model): string {
  const width = (pick: (field: Field) => string) => Math.max(0, ...fields.map((field) => pick(field).length));
  const [names, types] = [width((field) => field.name), width((field) => field.type)];
  const rows = fields.map((field) =>
    `  ${field.name.padEnd(names)} ${field.type.padEnd(types)} ${field.attributes}`.trimEnd(),
  );
  return [`model ${name} {`, ...rows, '', ...block.map((line) => `  ${line}`), '}'].join('\n');
}
