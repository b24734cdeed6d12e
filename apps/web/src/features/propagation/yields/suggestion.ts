import type { AppRouter } from '@rootclock/server/router';
import type { inferRouterOutputs } from '@trpc/server';

type Outputs = inferRouterOutputs<AppRouter>['propagation'];

/** What the record suggests of a batch, or of a start that is only thought of. */
export type ForecastSuggestion = Outputs['suggestForecast'];

/** What a batch of a plant can be started with. */
export type StartChoices = Outputs['readStartChoices'];
export type StartProtocol = StartChoices['protocols'][number];
