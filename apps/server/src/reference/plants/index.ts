import type { ReferencePlant } from '../plant-shape.ts';
import { blazingStars } from './blazing-stars.ts';
import { coneflowers } from './coneflowers.ts';
import { namesakes } from './namesakes.ts';
import { goldenrodsAsters } from './goldenrods-asters.ts';
import { grassesSedges } from './grasses-sedges.ts';
import { legumes } from './legumes.ts';
import { dryMilkweeds } from './milkweeds-dry.ts';
import { moistMilkweeds } from './milkweeds-moist.ts';
import { mintsBeardtongue } from './mints-beardtongue.ts';
import { shrubsVines } from './shrubs-vines.ts';
import { violetsUmbels } from './violets-umbels.ts';

/** Every plant of the reference data. The list is data: a nursery takes what it grows and mends what it knows better. */
export const referencePlants: readonly ReferencePlant[] = [
  ...dryMilkweeds,
  ...moistMilkweeds,
  ...legumes,
  ...coneflowers,
  ...blazingStars,
  ...goldenrodsAsters,
  ...mintsBeardtongue,
  ...violetsUmbels,
  ...shrubsVines,
  ...grassesSedges,
  ...namesakes,
];
