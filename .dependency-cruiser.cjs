// The import rules of the house, at error level; tests/structure/imports.test.ts runs them and tells what they forbid.

// A feature imports only those before it. People and files stand beside all: the runner and the router alone know people, and any feature may know files.
const features = [
  'plants',
  'sources',
  'stock',
  'pot-life',
  'propagation',
  'clients',
  'orders',
  'promises',
  'gardens',
  'sales',
  'planning',
  'records',
];
const tiers = {
  domain: '^packages/domain/src',
  contracts: '^packages/contracts/src',
  server: '^apps/server/src/features',
  web: '^apps/web/src/features',
};
const notTests = '\\.test\\.tsx?$';

const featureOrder = Object.entries(tiers).flatMap(([tier, folder]) =>
  features.slice(0, -1).map((feature, index) => ({
    name: `${tier}: ${feature} imports no later feature`,
    comment: `The order is ${features.join(', ')}. What both need belongs to the earlier one, or above them to the runner or router.`,
    severity: 'error',
    from: { path: `${folder}/${feature}/` },
    to: { path: `${folder}/(${features.slice(index + 1).join('|')})/` },
  })),
);

module.exports = {
  forbidden: [
    {
      name: 'nothing imports in a circle',
      comment: 'Move what both need into a file that imports neither.',
      severity: 'error',
      from: {},
      to: { circular: true },
    },
    {
      name: 'every import is found',
      comment: 'A file or package that is not there, or a package missing from this workspace package.json.',
      severity: 'error',
      from: {},
      to: { couldNotResolve: true },
    },
    {
      name: 'the domain is pure',
      comment: 'No package, no Node module, nothing outside packages/domain: no I/O, clock, randomness or environment.',
      severity: 'error',
      from: { path: tiers.domain, pathNot: notTests },
      to: { pathNot: tiers.domain },
    },
    {
      name: 'contracts know only the domain and zod',
      severity: 'error',
      from: { path: tiers.contracts, pathNot: notTests },
      to: { pathNot: [tiers.contracts, tiers.domain, '(^|/)node_modules/zod/'] },
    },
    ...featureOrder,
    {
      name: 'no feature knows people',
      comment: 'Who may do what is decided by the runner from the command’s roles.',
      severity: 'error',
      from: { path: `${tiers.server}/(${features.join('|')})/` },
      to: { path: `${tiers.server}/people/` },
    },
    {
      name: 'files know no feature',
      comment: 'Photos hang on many features; those that must know of them import files, and not the other way round.',
      severity: 'error',
      from: { path: `(${Object.values(tiers).join('|')})/files/` },
      to: { path: `(${Object.values(tiers).join('|')})/(${features.join('|')})/` },
    },
    {
      name: 'the web imports nothing of the server but the type of its router',
      severity: 'error',
      from: { path: '^apps/web/' },
      to: { path: '^apps/server/', dependencyTypesNot: ['type-only'] },
    },
    {
      name: 'the web imports no type of the server but its router’s',
      severity: 'error',
      from: { path: '^apps/web/' },
      to: { path: '^apps/server/', pathNot: '^apps/server/src/router\\.ts$' },
    },
    {
      name: 'the server does not know the web',
      severity: 'error',
      from: { path: '^(apps/server|packages)/' },
      to: { path: '^apps/web/' },
    },
    {
      name: 'the controls know no plant',
      comment: 'apps/web/src/ui is for any subject; what knows the nursery belongs to a feature.',
      severity: 'error',
      from: { path: '^apps/web/src/ui/', pathNot: notTests },
      to: { path: '^apps/web/src/(features|routes)/' },
    },
    {
      name: 'the database is reached from stores, reads and db alone',
      comment: 'Put the statement into the feature’s store.ts (for commands) or reads.ts (for screens).',
      severity: 'error',
      from: {
        path: '^apps/server/src/',
        pathNot: ['^apps/server/src/(db|cli)/', '[/-](store|reads)\\.ts$'],
      },
      to: {
        path: ['^apps/server/src/db/generated/', '(^|/)node_modules/(pg|@prisma)/'],
        dependencyTypesNot: ['type-only'],
      },
    },
    {
      name: 'the program does not know its tests',
      severity: 'error',
      from: { path: '^(apps|packages)/' },
      to: { path: '^tests/' },
    },
  ],
  options: {
    tsPreCompilationDeps: true,
    combinedDependencies: true,
    doNotFollow: { path: ['node_modules', '/generated/'] },
    exclude: { path: '/dist/' },
    enhancedResolveOptions: {
      exportsFields: ['exports'],
      conditionNames: ['import', 'types', 'default'],
      extensions: ['.ts', '.tsx', '.mjs', '.js', '.json'],
    },
  },
};
