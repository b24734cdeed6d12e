import type { ReferencePlant } from '../plant-shape.ts';
import type { ReferenceStage, ReferenceTexts } from './shape.ts';
import { sentence } from './stages.ts';

const PRACTICE = 'Common practice:';

/** The sources a plant's protocol rests on, each once. */
function sourcesOf({ facts }: ReferencePlant): string {
  const used = [
    facts.propagationMethods,
    facts.stratificationDays,
    facts.pretreatment,
    facts.germinationPercent,
    facts.seedCollection,
    facts.timeToGrowMonths,
    facts.growingNote,
    facts.secondGrowingNote,
  ];
  const printed = [...new Set(used.flatMap((fact) => (fact?.source ? [fact.source] : [])))];
  return [...printed, 'What is assumed, remembered or common practice has no published source.'].join('\n');
}

const handCaution = ({ facts }: ReferencePlant) => facts.sapCaution?.value ?? '';

function ofAll(
  plant: ReferencePlant,
): Pick<
  ReferenceTexts,
  'growingArea' | 'activeGrowth' | 'hardening' | 'harvest' | 'storage' | 'otherNotes' | 'references'
> {
  const { facts, handling } = plant;
  const keepsBall = handling.some(({ value }) => value === 'leave-root-ball-intact');
  return {
    growingArea: `${PRACTICE} trays on mesh benches, so that roots are pruned by air.`,
    activeGrowth:
      [facts.growingNote, facts.secondGrowingNote].flatMap((fact) => (fact ? [sentence(fact.value)] : [])).join(' ') ||
      `${PRACTICE} full light, a dilute feed, water when the surface has dried.`,
    hardening: `${PRACTICE} moved outdoors, out of the wind, watered less and no longer fed.`,
    harvest: keepsBall
      ? `${PRACTICE} planted with the root ball left as it is, since a broken taproot can kill the plant.`
      : `${PRACTICE} the root ball must hold when it is drawn from the cell.`,
    storage: `${PRACTICE} kept growing or dormant in its pot, shaded from winter sun; dormant pots are left no drier than damp.`,
    otherNotes: [handCaution(plant), facts.caution.value, facts.identityCaution?.value]
      .flatMap((text) => (text ? [sentence(text)] : []))
      .join(' '),
    references: sourcesOf(plant),
  };
}

export function seedTexts(plant: ReferencePlant, stages: readonly ReferenceStage[]): ReferenceTexts {
  const { facts } = plant;
  const treated = stages.filter(({ kind }) => kind === 'scarification' || kind === 'stratification');
  const cold = treated.find(({ kind }) => kind === 'stratification');
  const rubbed = treated.find(({ kind }) => kind === 'scarification');
  const coldDays = cold
    ? cold.shortDays === cold.longDays
      ? `${cold.usualDays}`
      : `${cold.shortDays} to ${cold.longDays}`
    : '';
  return {
    ...ofAll(plant),
    collection: facts.seedCollection
      ? `Seed gathered ${facts.seedCollection.value} (${facts.seedCollection.source ?? facts.seedCollection.standing}).`
      : `${PRACTICE} ripe seed from many plants, never more than a small part of what a stand bears.`,
    processing: `${PRACTICE} dried in paper, cleaned of chaff, kept dry and cool until it is treated.`,
    prePlanting: [
      ...(rubbed ? [rubbed.note] : []),
      cold
        ? `Cold and moist for ${coldDays} days (${cold.durationStanding}). ${cold.note}`.trim()
        : `No cold is needed (${facts.stratificationDays.standing}). ${sentence(facts.stratificationDays.note)}`.trim(),
    ].join(' '),
    establishment: stages
      .filter(({ kind }) => kind === 'sowing' || kind === 'emergence')
      .map(({ note }) => note)
      .filter(Boolean)
      .join(' '),
  };
}

const TAKEN = {
  cutting: 'shoots of vigorous, healthy mother plants, taken in the morning and kept damp and shaded.',
  'root-cutting': 'roots of dormant plants, as thick as a pencil, cut into pieces a finger long.',
  division: 'crowns lifted as growth begins and cut with a clean knife into pieces with buds and roots.',
} as const;

export function pieceTexts(plant: ReferencePlant, method: keyof typeof TAKEN): ReferenceTexts {
  return {
    ...ofAll(plant),
    collection: `${PRACTICE} ${TAKEN[method]}`,
    processing: `${PRACTICE} clean tools between plants; nothing is left to dry.`,
    prePlanting:
      method === 'cutting'
        ? `${PRACTICE} lower leaves off; rooting powder if it is used at all.`
        : `${PRACTICE} stuck or potted the same day, or kept cold and damp.`,
    establishment:
      method === 'cutting'
        ? `${PRACTICE} covered or misted until they root, in shade.`
        : `${PRACTICE} kept damp and out of the sun until they grow.`,
  };
}
