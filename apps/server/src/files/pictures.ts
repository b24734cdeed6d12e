import { isCalendarDate, isWithinYears, MOST_MEGAPIXELS } from '@rootclock/domain';
import readExif from 'exif-reader';
import PQueue from 'p-queue';
import type sharp from 'sharp';
import { refuse } from '../refusal.ts';
import { toldKind } from './told-kinds.ts';

/** A picture as it is kept: upright, without anything that its camera wrote into it. */
export interface MadePicture {
  full: Buffer;
  mediaType: 'image/jpeg' | 'image/webp';
  width: number;
  height: number;
  view: Buffer;
  thumb: Buffer;
  /** The day that its camera wrote down. */
  takenOn: string | null;
}

/** Longest edges. The whole picture is kept large enough to print it, and no larger. */
const FULL_PX = 4096;
const VIEW_PX = 1600;
const THUMB_PX = 480;

/** Unpacking takes a processor and up to some hundred megabytes each; what waits holds its file alone. */
const AT_ONCE = 2;
const MOST_WAITING = 16;
const queue = new PQueue({ concurrency: AT_ONCE });

const PIXELS_A_MEGAPIXEL = 1_000_000;
const LOADERS = ['VipsForeignLoadJpegBuffer', 'VipsForeignLoadPngBuffer', 'VipsForeignLoadWebpBuffer'];

let loaded: Promise<typeof sharp> | undefined;
/** Loaded with the first picture: most starts of a server meet none, and it takes memory. */
const library = () => (loaded ??= load());

async function load(): Promise<typeof sharp> {
  const { default: opened } = await import('sharp');
  // It reads far more than photos, and what is never read cannot be abused.
  opened.block({ operation: ['VipsForeignLoad'] });
  opened.unblock({ operation: LOADERS });
  opened.cache(false);
  opened.concurrency(1);
  return opened;
}

/** Makes what is kept of a picture as it was sent, or refuses it. */
export async function makePicture(bytes: Uint8Array): Promise<MadePicture> {
  const kind = toldKind(bytes);
  if (kind === 'heic') refuse('picture-is-heic', undefined);
  if (kind === 'pdf' || kind === 'other') refuse('not-a-picture', undefined);
  if (queue.size >= MOST_WAITING) refuse('too-much-at-once', undefined);
  return queue.add(() => make(bytes));
}

async function make(bytes: Uint8Array): Promise<MadePicture> {
  const open = await library();
  const options = { failOn: 'warning', limitInputPixels: MOST_MEGAPIXELS * PIXELS_A_MEGAPIXEL } as const;
  // Of the header alone, which unpacks nothing, so that what is too wide is told by its numbers.
  const told = await readable(() => open(bytes, { ...options, limitInputPixels: false }).metadata());
  const megapixels = (told.width * told.height) / PIXELS_A_MEGAPIXEL;
  if (megapixels > MOST_MEGAPIXELS)
    refuse('picture-too-wide', { megapixels: Math.ceil(megapixels), mostMegapixels: MOST_MEGAPIXELS });
  const upright = open(bytes, options)
    .autoOrient()
    .resize({ ...within(FULL_PX), withoutEnlargement: true });
  const { data: full, info } = await readable(() =>
    (told.hasAlpha ? upright.webp({ quality: 88 }) : upright.jpeg({ quality: 86 })).toBuffer({
      resolveWithObject: true,
    }),
  );
  const smaller = (longest: number) =>
    open(full)
      .resize({ ...within(longest), withoutEnlargement: true })
      .webp({ quality: 80 })
      .toBuffer();
  return {
    full,
    mediaType: told.hasAlpha ? 'image/webp' : 'image/jpeg',
    width: info.width,
    height: info.height,
    view: await smaller(VIEW_PX),
    thumb: await smaller(THUMB_PX),
    takenOn: told.exif ? dayTold(told.exif) : null,
  };
}

const within = (longest: number) => ({ width: longest, height: longest, fit: 'inside' }) as const;

async function readable<Answer>(work: () => Promise<Answer>): Promise<Answer> {
  try {
    return await work();
  } catch {
    return refuse('picture-broken', undefined);
  }
}

/** Cameras write the time on their own clock, without a zone, so that its day is the day there. */
function dayTold(exif: Buffer): string | null {
  try {
    const day = readExif(exif).Photo?.DateTimeOriginal?.toISOString().slice(0, 10) ?? '';
    return isCalendarDate(day) && isWithinYears(day) ? day : null;
  } catch {
    // A camera that writes nonsense there has taken a photo all the same.
    return null;
  }
}
