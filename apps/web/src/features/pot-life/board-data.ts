import type { AppRouter } from '@rootclock/server/router';
import type { inferRouterOutputs } from '@trpc/server';

export type Board = inferRouterOutputs<AppRouter>['potLife']['readBoard'];
export type BoardRow = Board['rows'][number];

export const tiedOf = ({
  reservedUnits,
  onHandUnits,
}: Pick<BoardRow, 'reservedUnits' | 'onHandUnits'>): 'none' | 'part' | 'whole' =>
  reservedUnits === 0 ? 'none' : reservedUnits < onHandUnits ? 'part' : 'whole';
