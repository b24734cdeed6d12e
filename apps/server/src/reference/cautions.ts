import type { Standing } from '@rootclock/domain';
import * as cited from './cited.ts';
import { type Fact, confirmed, memory, practice } from './fact.ts';

/** When a caution is to be shown: always, beside a kind of work, or beside plants of a genus. */
export type CautionOccasion =
  | { readonly always: true }
  | { readonly work: 'treatment' | 'digging' | 'selling' }
  | { readonly genus: string };

export interface ProductCaution {
  readonly code: string;
  readonly on: CautionOccasion;
  readonly text: string;
  readonly standing: Standing;
  readonly source: string | null;
}

function caution(code: string, on: CautionOccasion, said: Fact<string>): ProductCaution {
  return { code, on, text: said.value, standing: said.standing, source: said.source };
}

/** Where work can hurt. Each defers to local codes and licensed practice; none of them replaces either. */
export const productCautions: readonly ProductCaution[] = [
  caution(
    'milkweed-livestock',
    { genus: 'Asclepias' },
    confirmed(
      'Milkweeds poison horses, cattle, sheep and goats, dry in hay as well as fresh. None is planted beside livestock or hay ground.',
      cited.COLORADO_POISONOUS,
    ),
  ),
  caution(
    'milkweed-sap',
    { genus: 'Asclepias' },
    memory(
      'Milkweed sap harms the eye and irritates the skin: wear gloves, keep hands from the face, and see a doctor when sap is in an eye.',
    ),
  ),
  caution(
    'pipevine-acids',
    { genus: 'Aristolochia' },
    confirmed(
      'Pipevines hold aristolochic acids: never eat or brew any part, and wash after handling.',
      cited.IARC_VOLUME_82,
    ),
  ),
  caution(
    'wild-indigo-livestock',
    { genus: 'Baptisia' },
    memory('Wild indigos hold alkaloids; keep them from livestock and do not eat them.'),
  ),
  caution(
    'lupine-alkaloids',
    { genus: 'Lupinus' },
    memory('Lupines hold alkaloids; keep seed from children and livestock.'),
  ),
  caution(
    'pesticide-label',
    { work: 'treatment' },
    practice(
      'The label is the law. Leave pesticides to a licensed applicator where your state asks for one, and follow local codes and the re-entry time on the label.',
    ),
  ),
  caution(
    'host-plant-spray',
    { work: 'treatment' },
    practice(
      'Host plants for caterpillars are never sprayed or washed with soap; a treated one is kept out of habitat gardens until someone releases it with a reason.',
    ),
  ),
  caution(
    'bought-milkweed-residues',
    { genus: 'Asclepias' },
    confirmed(
      'Nursery milkweeds bought as wildlife plants carried 12.2 pesticides each on average, and 38 percent were above a harmful level: ask for the statement and keep it.',
      'Halsch et al. 2022, Biological Conservation',
    ),
  ),
  caution(
    'buried-utilities',
    { work: 'digging' },
    practice(
      'Have buried utilities located before digging, and wait for the marks. Local codes say who must ask and how early.',
    ),
  ),
  caution(
    'local-lists',
    { work: 'selling' },
    practice(
      'What may be sold or planted is for state and local lists to say: noxious weeds, protected plants and nursery inspection. Ask them, not this program.',
    ),
  ),
  caution(
    'collecting',
    { always: true },
    practice("Collect wild seed only with the landowner's leave and any permit the law asks for."),
  ),
];
