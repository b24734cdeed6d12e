import { errorKind } from './kind.ts';

export const filesErrors = {
  'file-too-large': errorKind<{ mostMegabytes: number }>('input', 413),
  /** It says that it is a picture, and cannot be read as one to its end. */
  'picture-broken': errorKind('input', 400),
  'picture-too-wide': errorKind<{ megapixels: number; mostMegapixels: number }>('input', 400),
  /** What phones of one maker keep photos in unless asked for another kind; nothing here can open it. */
  'picture-is-heic': errorKind('input', 400),
  'not-a-picture': errorKind('input', 400),
  'not-a-pdf': errorKind('input', 400),
  /** What it showed was blanked with the data of a client, so there is nothing to bring back. */
  'file-blanked': errorKind('refusal', 409),
} as const;
