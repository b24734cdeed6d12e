export const FEATURES = [
  'plants',
  'sources',
  'stock',
  'pot-life',
  'propagation',
  'clients',
  'orders',
  'promises',
  'gardens',
  'planning',
  'people',
  'files',
] as const;
export type FeatureName = (typeof FEATURES)[number];

/** What a command changed. The runner replans these and tells browsers which features to read again. */
export class Touched {
  /** Those on which promises may rest otherwise. */
  readonly lots = new Set<string>();
  /** Lots whose clocks may run otherwise. */
  readonly clocks = new Set<string>();
  readonly batches = new Set<string>();
  readonly lines = new Set<string>();
  /** Those whose open lines may be asked for another leave-by day now. */
  readonly clients = new Set<string>();
  readonly sites = new Set<string>();
  /** Those of the lots and batches that may serve a line better now: of which there is more, or which are other than they were. */
  readonly gaining = new Set<string>();
  readonly features = new Set<FeatureName>();
  /** Hashes of stored files that no row needs any more, as far as the command can tell. */
  readonly lettingGo = new Set<string>();
  /** A rule, window, plant or container changed: every open lot's clock is reckoned anew. */
  allClocks = false;
  /** Time alone or a setting changed what may be promised: every open line is looked at. */
  allPromises = false;
  /** Promises were touched that are too large to be solved under the lock: they are solved after the commit. */
  leavesPlanStale = false;

  lot(id: string): void {
    this.lotWithFewer(id);
    this.gaining.add(id);
  }
  /** A lot that only became smaller: whoever was promised of it keeps that as long as it is there. */
  lotWithFewer(id: string): void {
    this.lots.add(id);
    this.lotElsewhere(id);
  }
  /** A lot that only stands elsewhere: the cold reaches it or does not, and as many can be promised of it as before. */
  lotElsewhere(id: string): void {
    this.clocks.add(id);
    this.features.add('stock');
  }
  /** A lot that was held, released or treated: other people may have it now, and no clock knows of that. */
  lotOfOtherUse(id: string): void {
    this.lots.add(id);
    this.gaining.add(id);
    this.features.add('stock');
  }
  batch(id: string): void {
    this.batches.add(id);
    this.gaining.add(id);
    this.features.add('propagation');
  }
  line(id: string): void {
    this.lines.add(id);
    this.features.add('orders');
  }
}
