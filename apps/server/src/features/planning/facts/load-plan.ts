import type { PlanFacts, PlanSource, PlanSupply } from '@rootclock/domain';
import type { ReadContext } from '../../../trpc/operation.ts';
import { loadClockRules } from '../../pot-life/clocks-store.ts';
import type { ScopeLine } from '../../promises/allocation/scope.ts';
import { loadSeedFacts } from '../../sources/stores/reads.ts';
import { loadDemands, suppliesOf } from './demands.ts';
import { loadPlanProtocols } from './protocols.ts';
import {
  type ContainerRow,
  type ExpectedRow,
  loadBenches,
  loadContainers,
  loadExpected,
  loadPlants,
  loadPlanSettings,
  loadSources,
  type PlanSettings,
  type PlantRow,
  type SourceRow,
  standingOf,
} from './store.ts';
import { loadWearing } from './wearing.ts';

/** What a plant counts as where nobody said what it is worth: one whole unit of the currency, in its smallest. */
const NEUTRAL_VALUE = 100;
const CM2_IN_M2 = 10_000;

/** All that a plan is reckoned from, and the names of what it is about. */
export interface LoadedPlan {
  facts: PlanFacts;
  settings: PlanSettings;
  lines: Map<string, ScopeLine>;
  expected: Map<string, ExpectedRow>;
  plants: Map<string, PlantRow>;
  containers: Map<string, ContainerRow>;
  sources: Map<string, SourceRow>;
}

const byId = <Row extends { id: string }>(rows: readonly Row[]): Map<string, Row> =>
  new Map(rows.map((row) => [row.id, row]));

async function loadPlanSources(context: ReadContext, rows: readonly SourceRow[]): Promise<PlanSource[]> {
  const seed = new Map(
    (
      await loadSeedFacts(
        context,
        rows.map(({ id }) => id),
      )
    ).map((facts) => [facts.sourceId, facts]),
  );
  return rows.map(({ id, code, plantId, kind, seedZone, origin }) => {
    const facts = seed.get(id);
    return {
      id,
      code,
      plantId,
      kind,
      seedZone,
      origin,
      gatheredOn: facts?.gatheredOn ?? null,
      gramsLeft: facts?.gramsLeft ?? null,
      purity: facts?.purity ?? null,
      seedsPerGram: facts?.seedsPerGram ?? null,
      germination: facts?.germination ?? null,
      sowFresh: facts?.sowFresh ?? false,
    };
  });
}

/** Reads everything in one transaction, so that stock, orders and seed are of one moment. */
export async function loadPlan(context: ReadContext, confidence: number | null): Promise<LoadedPlan> {
  const settings = await loadPlanSettings(context);
  const expected = await loadExpected(context);
  const { scope, demands } = await loadDemands(context, expected);
  const plantIds = [...new Set(demands.map(({ plantId }) => plantId))];
  const plants = byId(await loadPlants(context, plantIds));
  const containers = byId(await loadContainers(context));
  const sources = byId(await loadSources(context, plantIds));
  const { rules, windows, freezeMd } = await loadClockRules(context);
  const benches = await loadBenches(context);
  const supplies: PlanSupply[] = suppliesOf(
    scope,
    await loadWearing(context, [...new Set(scope.supplies.map(({ plantId }) => plantId))]),
  );
  const facts: PlanFacts = {
    today: context.today,
    confidence: confidence ?? settings.confidence,
    demands,
    supplies,
    protocols: await loadPlanProtocols(context, plantIds, containers, settings),
    sources: await loadPlanSources(context, [...sources.values()]),
    plants: [...plants.values()],
    containers: [...containers.values()],
    seasons: { rules, windows, freezeMd },
    space: {
      capacityCm2: benches.capacityM2 === null ? null : Math.round(benches.capacityM2 * CM2_IN_M2),
      standing: benches.standing.map((row) => standingOf(row, context.today)),
    },
    neutralValue: NEUTRAL_VALUE,
  };
  return { facts, settings, lines: byId(scope.lines), expected: byId(expected), plants, containers, sources };
}
