import { parseScientificName, plantCode } from '@rootclock/domain';
import { derivedId } from '../../derived-id.ts';
import { referenceContainers, type ReferencePlant, referencePlants } from '../../reference/index.ts';
import type { StoredContainer } from './containers/store.ts';
import type { NewName } from './names/store.ts';
import { handlingField } from './own-facts.ts';
import type { NewFact, NewPlant } from './store.ts';

/** The id of a row of the reference data in a nursery: the same each time, so that loading again finds what is there. */
export function referenceId(
  nurseryId: string,
  kind: 'plant' | 'name' | 'container' | 'rule' | 'window' | 'protocol' | 'protocol-version',
  code: string,
): string {
  return derivedId('reference', nurseryId, kind, code);
}

/** The plants, each under a code that none of the nursery's own has. */
export function plantRows(nurseryId: string, taken: ReadonlySet<string>, known: ReadonlySet<string>): NewPlant[] {
  const codes = new Set(taken);
  return referencePlants.flatMap((plant) => {
    const id = referenceId(nurseryId, 'plant', plant.code);
    if (known.has(id)) return [];
    const code = codes.has(plant.code) ? plantCode(plant.scientificName, codes) : plant.code;
    codes.add(code);
    return [{ id, code, ...nameOf(plant), ...traitsOf(plant) }];
  });
}

const nameOf = ({ scientificName, scientificNameAuthorship }: ReferencePlant) => ({
  ...parseScientificName(scientificName),
  scientificName,
  scientificNameAuthorship,
});

function traitsOf({ vernacularName, family, facts, handling }: ReferencePlant) {
  return {
    vernacularName,
    family,
    rootHabit: facts.rootHabit.value,
    larvalHost: facts.larvalHost.value,
    dormantMonths: [...facts.dormantMonths.value],
    lastEmergenceMd: facts.lastEmergenceMd.value,
    yearOfFirstBloom: facts.yearOfFirstBloom.value,
    nativeRegions: [...facts.nativeRegions.value],
    handling: handling.map(({ value }) => value),
  };
}

/** Names of the plants that were added just now: a name that the nursery took away does not come back. */
export function nameRows(nurseryId: string, added: ReadonlySet<string>): NewName[] {
  return referencePlants.flatMap((plant) => {
    const plantId = referenceId(nurseryId, 'plant', plant.code);
    if (!added.has(plantId)) return [];
    const names: Pick<NewName, 'kind' | 'name' | 'standing'>[] = [
      { kind: 'scientific', name: plant.scientificName, standing: plant.nameStanding },
      ...plant.synonyms.map(({ scientificName, scientificNameAuthorship, standing }) => ({
        kind: 'synonym' as const,
        name: `${scientificName} ${scientificNameAuthorship}`.trim(),
        standing,
      })),
      ...plant.commonNames.map(({ name, standing }) => ({ kind: 'common' as const, name, standing })),
    ];
    return names.map((name) => ({
      ...name,
      plantId,
      id: referenceId(nurseryId, 'name', `${plant.code}/${name.kind}/${name.name}`),
    }));
  });
}

/** Facts of the plants that are the reference's own here. */
export function factRows(nurseryId: string, plantIds: ReadonlySet<string>): NewFact[] {
  return referencePlants.flatMap((plant) => {
    const plantId = referenceId(nurseryId, 'plant', plant.code);
    if (!plantIds.has(plantId)) return [];
    const facts = Object.entries(plant.facts).map(([field, fact]) => ({
      plantId,
      field,
      value: fact.value,
      standing: fact.standing,
      source: fact.source,
      note: fact.note ?? null,
    }));
    const rules = plant.handling.map((rule) => ({
      plantId,
      field: handlingField(rule.value),
      value: true,
      standing: rule.standing,
      source: rule.source,
      note: rule.note ?? null,
    }));
    const name = {
      plantId,
      field: 'scientificName',
      value: plant.scientificName,
      standing: plant.nameStanding,
      source: plant.nameSource,
      note: null,
    };
    return [name, ...facts, ...rules];
  });
}

export const containerRows = (nurseryId: string): StoredContainer[] =>
  referenceContainers.map((container) => ({ ...container, id: referenceId(nurseryId, 'container', container.code) }));
