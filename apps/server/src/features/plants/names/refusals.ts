import { refuse } from '../../../refusal.ts';
import type { NameBearer } from './store.ts';

/** Refuses an accepted name that another plant has, as its own or as a synonym: one plant must not be kept under two names. */
export function requireNewScientificName(name: string, bearers: readonly NameBearer[], field: string): void {
  const accepted = bearers.find(({ kind }) => kind === 'scientific');
  if (accepted)
    refuse(
      'plant-exists',
      { plant: accepted.scientificName, code: accepted.code, isRetired: accepted.isRetired },
      field,
    );
  const synonym = bearers.find(({ kind }) => kind === 'synonym');
  if (synonym) refuse('name-is-synonym', { name, plant: synonym.scientificName }, field);
}
