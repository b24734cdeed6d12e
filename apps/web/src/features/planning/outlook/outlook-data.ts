import type { AppRouter } from '@rootclock/server/router';
import type { inferRouterOutputs } from '@trpc/server';

/** Supply of an item by week against what is wanted of it, as the server answers it. */
export type Outlook = inferRouterOutputs<AppRouter>['planning']['readOutlook'];
