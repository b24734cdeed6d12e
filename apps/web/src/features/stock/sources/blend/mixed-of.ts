import type { AppRouter } from '@rootclock/server/router';
import type { inferRouterOutputs } from '@trpc/server';

export type BlendChoice = inferRouterOutputs<AppRouter>['sources']['listSources']['rows'][number];

const FIELDS = ['provenance', 'seedZone', 'origin'] as const;

/** What parts do not agree on, as the server will say it of the blend. */
export const mixedOf = (parts: readonly Pick<BlendChoice, (typeof FIELDS)[number]>[]): (typeof FIELDS)[number][] =>
  FIELDS.filter((field) => new Set(parts.map((part) => part[field])).size > 1);
