/**
 * Where everything is. Features may not import each other's later ones, but their pages lead to each other: each asks here. A feature
 * registers its routes under the same addresses with `$` in place of the ids (see routes/index.ts).
 */
export const paths = {
  today: () => '/',
  tasks: () => '/tasks',
  signIn: () => '/sign-in',
  firstOwner: () => '/begin',
  more: () => '/more',
  outbox: () => '/outbox',

  stock: () => '/stock',
  board: () => '/stock/board',
  lots: () => '/stock/lots',
  lot: (lotId: string) => `/stock/lots/${lotId}`,
  places: () => '/stock/places',
  place: (placeId: string) => `/stock/places/${placeId}`,
  receive: () => '/stock/receive',
  opening: () => '/stock/opening',

  propagation: () => '/propagation',
  batch: (batchId: string) => `/propagation/${batchId}`,
  startBatch: () => '/propagation/start',
  record: () => '/propagation/record',
  plantRecord: (plantId: string) => `/propagation/record/${plantId}`,
  protocols: () => '/propagation/protocols',
  protocol: (protocolId: string) => `/propagation/protocols/${protocolId}`,
  newProtocol: () => '/propagation/protocols/new',
  reviseProtocol: (protocolId: string) => `/propagation/protocols/${protocolId}/revise`,
  /** A page to print, which the server draws: not one of the app's own. */
  printedProtocol: (versionId: string, language: string) => `/paper/protocols/${versionId}.pdf?language=${language}`,
  sources: () => '/sources',
  source: (sourceId: string) => `/sources/${sourceId}`,

  gardens: () => '/gardens',
  order: (orderId: string) => `/gardens/orders/${orderId}`,
  newOrder: () => '/gardens/new',
  toPull: () => '/gardens/to-pull',
  whatIf: () => '/gardens/what-if',
  pullList: (orderId: string) => `/gardens/orders/${orderId}/pull`,
  planting: (orderId: string) => `/gardens/orders/${orderId}/plant`,
  handOver: (orderId: string) => `/gardens/orders/${orderId}/hand-over`,
  bringBack: (orderId: string) => `/gardens/orders/${orderId}/bring-back`,
  clients: () => '/gardens/clients',
  client: (clientId: string) => `/gardens/clients/${clientId}`,
  kits: () => '/gardens/kits',
  site: (siteId: string) => `/gardens/sites/${siteId}`,

  planning: () => '/planning',
  expectedDemand: () => '/planning/demand',
  outlook: () => '/planning/outlook',

  plants: () => '/plants',
  plant: (plantId: string) => `/plants/${plantId}`,
  addPlant: () => '/plants/add',
  editPlant: (plantId: string) => `/plants/${plantId}/edit`,
  containers: () => '/plants/containers',
  rules: () => '/plants/rules',
  windows: () => '/plants/windows',
  substitutes: () => '/plants/substitutes',

  people: () => '/people',
  settings: () => '/settings',
  ownSettings: () => '/settings/own',
} as const;

/** What the form that starts a batch is filled in with; whatever is left out stays as the form has it. */
export interface StartAsk {
  plantId: string;
  protocolVersionId?: string | null;
  sourceId?: string | null;
  /** Packs in stratification that its seed is drawn from. */
  packsId?: string | null;
  units?: number | null;
  trays?: number | null;
  seedsSown?: number | null;
  seedGrams?: number | null;
  targetContainerId?: string | null;
  readyOn?: string | null;
  cautiousUnits?: number | null;
  usualUnits?: number | null;
  stagePosition?: number | null;
  placeId?: string | null;
  day?: string | null;
}

/** The form that starts a batch, filled in: `<ButtonLink {...startBatchLink({ plantId, … })}>`. */
export function startBatchLink(ask: StartAsk): { to: string; search: Record<string, string | number> } {
  const search: Record<string, string | number> = {};
  for (const [name, value] of Object.entries(ask) as [string, string | number | null | undefined][])
    if (value !== null && value !== undefined) search[name] = value;
  return { to: paths.startBatch(), search };
}
