import { defineConfig } from 'prisma/config';

// One schema file a feature. The database address is given to the server alone: nothing here connects.
export default defineConfig({
  schema: '.',
  migrations: { path: 'migrations' },
});
