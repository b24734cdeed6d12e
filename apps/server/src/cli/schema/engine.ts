// Prisma's schema engine as WebAssembly, from the packages: it reads a database into a schema and compares the two
// without the native program that Prisma's own command line would download.
import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import * as glue from '@prisma/schema-engine-wasm/schema_engine_bg';
import { PrismaPg } from '@prisma/adapter-pg';
import { bindMigrationAwareSqlAdapterFactory, ColumnTypeEnum, type SqlQuery } from '@prisma/driver-adapter-utils';
import pg from 'pg';

export interface SchemaFile {
  path: string;
  content: string;
}

const charOid = 18;
const bpcharOid = 1042;

let loading: Promise<void> | undefined;

/** Instantiates the engine once for this process. */
function load(): Promise<void> {
  const file = createRequire(import.meta.url)
    .resolve('@prisma/schema-engine-wasm/schema_engine_bg')
    .replace(/\.js$/, '.wasm');
  Object.assign(globalThis, {
    PRISMA_WASM_PANIC_REGISTRY: { set_message: (words: string) => console.error('schema engine:', words) },
  });
  loading ??= WebAssembly.instantiate(readFileSync(file), {
    './schema_engine_bg.js': glue as unknown as WebAssembly.ModuleImports,
  }).then(({ instance }) => {
    glue.__wbg_set_wasm(instance.exports);
    (instance.exports.__wbindgen_start as () => void)();
  });
  return loading;
}

type Io = { performIO(query: SqlQuery): Promise<pg.QueryArrayResult> };

/** Prisma's pg adapter, taught the one-byte "char" type that the catalogs use and that it does not map. */
function catalogAdapter(pool: pg.Pool): PrismaPg {
  const factory = new PrismaPg(pool);
  const connect = factory.connect.bind(factory);
  factory.connect = async () => {
    const adapter = await connect();
    const io = adapter as unknown as Io;
    const performIO = io.performIO.bind(adapter);
    const charColumns = new WeakMap<SqlQuery, number[]>();
    io.performIO = async (query) => {
      const result = await performIO(query);
      charColumns.set(
        query,
        result.fields.flatMap((field, index) => (field.dataTypeID === charOid ? [index] : [])),
      );
      for (const field of result.fields) if (field.dataTypeID === charOid) field.dataTypeID = bpcharOid;
      return result;
    };
    const queryRaw = adapter.queryRaw.bind(adapter);
    adapter.queryRaw = async (query) => {
      const result = await queryRaw(query);
      for (const index of charColumns.get(query) ?? []) result.columnTypes[index] = ColumnTypeEnum.Character;
      return result;
    };
    return adapter;
  };
  return factory;
}

async function withEngine<T>(
  url: string,
  files: SchemaFile[],
  work: (engine: glue.SchemaEngine) => Promise<T>,
): Promise<T> {
  await load();
  const pool = new pg.Pool({ connectionString: url, max: 2 });
  try {
    const datamodels = files.map((file): [string, string] => [file.path, file.content]);
    const engine = await glue.SchemaEngine.new(
      { datamodels },
      () => {},
      bindMigrationAwareSqlAdapterFactory(catalogAdapter(pool)),
    );
    try {
      return await work(engine);
    } finally {
      engine.free();
    }
  } finally {
    await pool.end();
  }
}

/** What Prisma reads out of a database: one text with every model, named as the tables are. */
export function introspect(url: string, header: string): Promise<string> {
  const files = [{ path: 'schema.prisma', content: header }];
  return withEngine(url, files, async (engine) => {
    const { schema } = await engine.introspect({
      schema: { files },
      baseDirectoryPath: '.',
      force: true,
      compositeTypeDepth: -1,
      namespaces: null,
    });
    return schema.files.map((file) => file.content).join('\n');
  });
}

/**
 * SQL that would turn the database into what the schema files say; empty when they agree. It sees tables, columns, keys and
 * plain indexes; CHECKs, triggers, row security, views and partial indexes are held by other tests.
 */
export function drift(url: string, files: SchemaFile[], externalTables: string[]): Promise<string> {
  return withEngine(url, files, async (engine) => {
    const { exitCode, stdout } = await engine.diff({
      from: { tag: 'schemaDatasource', files, configDir: '.' },
      to: { tag: 'schemaDatamodel', files },
      script: true,
      exitCode: true,
      filters: { externalTables, externalEnums: [] },
    });
    return exitCode === 0 ? '' : (stdout ?? 'the schema differs, but the engine gave no statement');
  });
}
