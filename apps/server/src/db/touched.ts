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
  readonly lots = new Set<string>();
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
  /** The command asks for plants that nobody was promised before. Where no plan can be made for it in time it is refused; whatever else happened is kept. */
  asksForMore = false;
  /** Time alone or a setting changed what may be promised: every open line is looked at. */
  allPromises = false;

  lot(id: string): void {
    this.lotWithFewer(id);
    this.gaining.add(id);
  }
  /** A lot that only became smaller: whoever was promised of it keeps that as long as it is there. */
  lotWithFewer(id: string): void {
    this.lots.add(id);
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
