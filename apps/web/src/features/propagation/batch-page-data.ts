import type { AppRouter } from '@rootclock/server/router';
import type { inferRouterOutputs } from '@trpc/server';

/** A batch as its page reads it. */
export type BatchPageData = inferRouterOutputs<AppRouter>['propagation']['readBatch'];
export type StoryEntry = BatchPageData['story'][number];
