import {
  BATCH_UNITS,
  MAX_STAGE_DAYS,
  needsSource,
  PROPAGATION_METHODS,
  STAGE_KINDS,
  STAGE_LIGHTS,
  STANDINGS,
} from '@rootclock/domain';
import * as z from 'zod/mini';
import { id, longText, monthDay, optionalText, page, share, text } from '../../fields.ts';

/** What the printed page says in words: the fields of public native-plant propagation protocols, in their order. */
export const PROTOCOL_TEXTS = [
  'collection',
  'processing',
  'prePlanting',
  'growingArea',
  'establishment',
  'activeGrowth',
  'hardening',
  'harvest',
  'storage',
  'otherNotes',
  'references',
] as const;
export type ProtocolText = (typeof PROTOCOL_TEXTS)[number];

const days = z.int().check(z.gte(0), z.lte(MAX_STAGE_DAYS));
const celsius = z.nullable(z.number().check(z.gte(-40), z.lte(60)));
const standing = z.enum(STANDINGS);

const stage = z
  .strictObject({
    kind: z.enum(STAGE_KINDS),
    shortDays: days,
    usualDays: days,
    longDays: days,
    durationStanding: z._default(standing, 'own setting'),
    durationSource: optionalText,
    /** Of what enters the stage, 0 to 1; of `emergence` a share of the seeds. */
    share,
    shareStanding: z._default(standing, 'own setting'),
    shareSource: optionalText,
    /** Days of the year on which it may begin; left out, any day. */
    season: z.optional(z.nullable(z.strictObject({ fromMd: monthDay, toMd: monthDay }))),
    /** Makes no headway while the plant is dormant. */
    rests: z._default(z.boolean(), false),
    temperatureLowC: z._default(celsius, null),
    temperatureHighC: z._default(celsius, null),
    light: z._default(z.enum(STAGE_LIGHTS), ''),
    depthMm: z._default(z.nullable(z.int().check(z.gte(0), z.lte(500))), null),
    medium: z._default(text(z.trim(), z.maxLength(200)), ''),
    containerId: z._default(z.nullable(id), null),
    note: z._default(longText, ''),
  })
  .check(
    // A published figure without its source could not be looked up again.
    z.refine((input) => !needsSource(input.durationStanding) || Boolean(input.durationSource), {
      path: ['durationSource'],
      params: { problem: 'required' },
    }),
    z.refine((input) => !needsSource(input.shareStanding) || Boolean(input.shareSource), {
      path: ['shareSource'],
      params: { problem: 'required' },
    }),
  );

const words = z._default(longText, '');
const texts = z.strictObject({
  collection: words,
  processing: words,
  prePlanting: words,
  growingArea: words,
  establishment: words,
  activeGrowth: words,
  hardening: words,
  harvest: words,
  storage: words,
  otherNotes: words,
  references: words,
});

/** What a version says. */
const content = {
  startUnit: z.enum(BATCH_UNITS),
  startContainerId: z._default(z.nullable(id), null),
  targetContainerId: z._default(z.nullable(id), null),
  seedsPerCell: z._default(z.nullable(z.int().check(z.gte(1), z.lte(200))), null),
  stages: z.array(stage).check(z.minLength(1), z.maxLength(STAGE_KINDS.length)),
  texts: z.prefault(texts, {}),
};

const label = z._default(text(z.trim(), z.maxLength(80)), '');

/** A plant's protocol for one method. `label` tells two of the same plant and method apart by the treatment they try. */
export const addProtocol = z.strictObject({
  protocolId: id,
  versionId: id,
  plantId: id,
  method: z.enum(PROPAGATION_METHODS),
  label,
  ...content,
  changeNote: words,
});

/** A new version. `basedOnVersionId` is the one it was written from, so that nobody writes over what a colleague wrote meanwhile. */
export const reviseProtocol = z.strictObject({
  protocolId: id,
  versionId: id,
  basedOnVersionId: id,
  ...content,
  /** What was changed and why, for whoever asks later. */
  changeNote: text(z.trim(), z.minLength(1), z.maxLength(2000)),
});

export const retireProtocol = z.strictObject({ protocolId: id });
export const restoreProtocol = z.strictObject({ protocolId: id });

/** The reference protocols of the nursery's plants; what is there already is left as it is. */
export const loadReferenceProtocols = z.strictObject({});

export const PROTOCOL_HAVE = ['all', 'with', 'without'] as const;

export const listProtocols = z.strictObject({
  /** Begins a word of any of the plant's names, or its code. */
  text: z.optional(z.nullable(text(z.trim(), z.maxLength(160)))),
  method: z.optional(z.nullable(z.enum(PROPAGATION_METHODS))),
  plantId: z.optional(z.nullable(id)),
  /** Plants with a protocol (of the method, if one is asked for), without one, or all. */
  have: z._default(z.enum(PROTOCOL_HAVE), 'all'),
  /** The protocols that were retired, instead of those in use. */
  retired: z._default(z.boolean(), false),
  ...page,
});

/** The version in use, or the one asked for. */
export const readProtocol = z.strictObject({ protocolId: id, versionId: z.optional(z.nullable(id)) });
