import type { PlantByState, PotLifeBasis, PotLifeReachName, RootHabit, Standing, WinterCarry } from '@rootclock/domain';

export interface RuleRow {
  id: string;
  edition: number;
  basis: PotLifeBasis;
  span: string | null;
  reach: PotLifeReachName;
  lotId: string | null;
  lotCode: string | null;
  plantId: string | null;
  scientificName: string | null;
  containerId: string | null;
  containerName: string | null;
  genus: string | null;
  rootHabit: RootHabit | null;
  winterCarry: WinterCarry | null;
  standing: Standing;
  source: string | null;
  note: string;
  /** Open lots and batches whose plant-by day this rule sets now. */
  binds: number;
}

export interface WindowRow {
  id: string;
  edition: number;
  opensMd: string;
  closesMd: string;
  maxContainerMl: number | null;
  region: string | null;
  standing: Standing;
  source: string | null;
  note: string;
}

export interface WindowList {
  windows: WindowRow[];
  freezeMd: string;
  freezeStanding: Standing;
  /** Of the nursery's settings, the freeze day among them. */
  edition: number;
}

/** A lot or batch whose plant-by day a change would move. */
export interface MovedSubject {
  kind: 'lot' | 'batch';
  id: string;
  code: string;
  scientificName: string;
  fromOn: string | null;
  toOn: string | null;
  toState: PlantByState;
}

export interface ChangePreview {
  /** Open lots and batches in all. */
  open: number;
  earlier: number;
  later: number;
  /** Of the earlier ones, those whose day would then be over. */
  nowPast: number;
  /** At most six, those that lose most days first. */
  examples: MovedSubject[];
}
