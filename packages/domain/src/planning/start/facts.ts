import type { CalendarDate } from '../../kernel/dates.ts';
import type { MonthDay } from '../../kernel/month-days.ts';
import type { RootHabit } from '../../plants/traits.ts';
import type { PotLifeRule } from '../../pot-life/rules.ts';
import type { PlantingWindow } from '../../pot-life/windows.ts';
import type { LearnedStage } from '../../propagation/learning/learn-stages.ts';
import type { ProtocolPlan } from '../../propagation/protocol/stages.ts';
import type { BatchUnit, PropagationMethod } from '../../propagation/words.ts';
import type { SourceKind } from '../../sources/source-words.ts';
import type { Shapes } from '../../statistics/beta-binomial.ts';
import type { ContainerKind } from '../../stock/ledger-words.ts';

/** What is believed of the share of units that passes some stages, and the counts it rests on. */
export interface PlanPassing extends Pick<LearnedStage, 'stage' | 'covers' | 'share' | 'tried' | 'batches'> {
  /** Null where the share is taken as known. */
  shapes: Shapes | null;
}

/** One current protocol of a plant. */
export interface PlanProtocol {
  versionId: string;
  protocolId: string;
  plantId: string;
  method: PropagationMethod;
  /** Empty for the usual treatment. */
  label: string;
  startUnit: BatchUnit;
  startContainerId: string | null;
  targetContainerId: string | null;
  /** The container that seed out of packs is sown into, and the one it is pricked out into, where the stages name them. */
  sowingContainerId: string | null;
  seedsPerCell: number | null;
  plan: ProtocolPlan;
  /** In the order of the stages; together they cover all of them. */
  passing: readonly PlanPassing[];
}

export interface PlanContainer {
  id: string;
  kind: ContainerKind;
  /** Of one pot or cell. */
  volumeMl: number | null;
  /** Of a pot, or of a whole tray. */
  footprintMm2: number | null;
  cells: number | null;
}

/** A source that is not retired. */
export interface PlanSource {
  id: string;
  code: string;
  plantId: string;
  kind: SourceKind;
  seedZone: string | null;
  origin: string;
  gatheredOn: CalendarDate | null;
  /** Null where nothing was ever weighed in. */
  gramsLeft: number | null;
  purity: number | null;
  seedsPerGram: number | null;
  germination: number | null;
  sowFresh: boolean;
}

export interface PlanPlant {
  id: string;
  genus: string;
  rootHabit: RootHabit;
  dormantMonths: readonly number[];
  isCultivar: boolean;
}

/** What limits time in pots, and when plants may go out. */
export interface PlanSeasons {
  rules: readonly PotLifeRule[];
  windows: readonly PlantingWindow[];
  freezeMd: MonthDay;
}
