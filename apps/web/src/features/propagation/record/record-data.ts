import type { AppRouter } from '@rootclock/server/router';
import type { inferRouterOutputs } from '@trpc/server';

type Outputs = inferRouterOutputs<AppRouter>['propagation'];

export type NurseryRecord = Outputs['readRecord'];
export type RecordPlant = NurseryRecord['plants'][number];
export type RecordedShares = NurseryRecord['shares'][number];
export type Settings = NurseryRecord['settings'];
export type PlantRecord = Outputs['readPlantRecord'];
export type PotSurvival = PlantRecord['survivals'][number];
