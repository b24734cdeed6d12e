/**
 * The main places to go, in the order of a working day. Those marked `bar` stand in the phone's lower bar, the others under More. A
 * destination whose feature has registered no route yet is not offered.
 */
import { paths } from '../lib/paths.ts';

export type DestinationKey =
  | 'today'
  | 'tasks'
  | 'stock'
  | 'propagation'
  | 'gardens'
  | 'planning'
  | 'plants'
  | 'people'
  | 'settings';

export interface Destination {
  key: DestinationKey;
  to: string;
  bar: boolean;
  /** Only this very address is the destination, as with the start. */
  exact?: boolean;
}

export const DESTINATIONS: readonly Destination[] = [
  { key: 'today', to: paths.today(), bar: true, exact: true },
  { key: 'stock', to: paths.stock(), bar: true },
  { key: 'propagation', to: paths.propagation(), bar: true },
  { key: 'gardens', to: paths.gardens(), bar: true },
  { key: 'tasks', to: paths.tasks(), bar: false },
  { key: 'planning', to: paths.planning(), bar: false },
  { key: 'plants', to: paths.plants(), bar: false },
  { key: 'people', to: paths.people(), bar: false },
  { key: 'settings', to: paths.settings(), bar: false },
];

/** The destinations that have a page. */
export const offered = (registered: object): Destination[] =>
  DESTINATIONS.filter((destination) => destination.to in registered);
