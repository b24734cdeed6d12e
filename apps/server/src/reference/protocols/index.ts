import type { PropagationMethod } from '@rootclock/domain';
import type { ReferencePlant } from '../plant-shape.ts';
import { referencePlants } from '../plants/index.ts';
import { cuttingProtocol, divisionProtocol, rootCuttingProtocol } from './pieces.ts';
import { published } from './published.ts';
import { seedProtocol } from './seed.ts';
import type { Particulars, ReferenceProtocol } from './shape.ts';

export type { ReferenceProtocol } from './shape.ts';

const builders: Record<PropagationMethod, (plant: ReferencePlant, particulars?: Particulars) => ReferenceProtocol> = {
  seed: seedProtocol,
  cutting: cuttingProtocol,
  'root-cutting': rootCuttingProtocol,
  division: divisionProtocol,
};

/** How the facts write the methods. */
const METHOD_OF: Readonly<Record<string, PropagationMethod>> = {
  seed: 'seed',
  cuttings: 'cutting',
  'stem cuttings': 'cutting',
  'softwood cuttings': 'cutting',
  'semi-hardwood cuttings': 'cutting',
  'root cuttings': 'root-cutting',
  taproot: 'root-cutting',
  division: 'division',
  'rhizome division': 'division',
  rhizome: 'division',
};

export function methodsOf({ facts, scientificName }: ReferencePlant): PropagationMethod[] {
  const methods = facts.propagationMethods.value.map((word) => {
    const method = METHOD_OF[word];
    if (method === undefined)
      throw new Error(`${scientificName} is propagated by “${word}”, which no protocol is written for`);
    return method;
  });
  return [...new Set(methods)];
}

/** A protocol for each plant of the reference data and each method its facts name. Standing is per figure. */
export const referenceProtocols: readonly ReferenceProtocol[] = referencePlants.flatMap((plant) =>
  methodsOf(plant).map((method) => builders[method](plant, published[plant.code]?.[method])),
);
