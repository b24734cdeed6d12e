/** The kinds of entry: what one command did to the ledger. */
export const ENTRY_KINDS = [
  'opening',
  'receive',
  'start',
  'count',
  'pot',
  'pot-up',
  'convert',
  'split',
  'merge',
  'move',
  'lose',
  're-identify',
  'hold',
  'release',
  'pull',
  'plant',
  'return',
  'sell',
  'give',
  'observe',
  'treat',
  'close',
  'reverse',
] as const;
export type EntryKind = (typeof ENTRY_KINDS)[number];

/** Where units enter the ledger from. */
export const ENTRANCES = ['opening', 'bought', 'started', 'found'] as const;
/** Where units leave the ledger to. */
export const EXITS = ['planted', 'sold', 'given', 'lost', 'unexplained'] as const;
export const OUTSIDES = [...ENTRANCES, ...EXITS] as const;
export type Outside = (typeof OUTSIDES)[number];

/** Only these entries may state different counts on their two sides: cells pricked out to pots, divisions, clumps, patched trays. */
export const CONVERTING_KINDS = ['pot', 'convert'] as const satisfies readonly EntryKind[];
/** A lot takes units of another lot or batch only in these entries, and then it is made by the entry. */
export const LOT_MAKING_KINDS = ['pot', 'pot-up', 'convert', 'split', 'merge'] as const satisfies readonly EntryKind[];

/** Why plants were lost; 'looks-dead' is asked about once more while the plant may only be dormant. */
export const LOSS_CAUSES = [
  'looks-dead',
  'winter',
  'drought',
  'rot',
  'pests',
  'animals',
  'weather',
  'mishandled',
  'discarded',
  'failed',
  'unknown',
] as const;
export type LossCause = (typeof LOSS_CAUSES)[number];

export const HOLD_REASONS = ['quarantine', 'treated', 'mother-stock', 'inspector'] as const;
export type HoldReason = (typeof HOLD_REASONS)[number];

export const COUNT_KINDS = ['counted', 'sampled', 'estimated'] as const;
export type CountKind = (typeof COUNT_KINDS)[number];

export const PLACE_KINDS = [
  'house',
  'bay',
  'bench',
  'yard',
  'cold-frame',
  'staging',
  'nursery-bed',
  'quarantine',
] as const;
export type PlaceKind = (typeof PLACE_KINDS)[number];

export const CONTAINER_KINDS = ['pot', 'tray', 'flat', 'ground'] as const;
export type ContainerKind = (typeof CONTAINER_KINDS)[number];

export const OBSERVATION_KINDS = ['root-ball', 'bloom', 'pest', 'dormant', 'thinned', 'height', 'note'] as const;
export type ObservationKind = (typeof OBSERVATION_KINDS)[number];
/** What the check of a root ball found; only 'holds' makes a lot ready. */
export const ROOT_BALL_RESULTS = ['holds', 'not-yet', 'circling'] as const;
export type RootBallResult = (typeof ROOT_BALL_RESULTS)[number];

/** Days over which one lot may be potted; the earliest day governs its clocks. */
export const POTTING_DAYS = 7;
