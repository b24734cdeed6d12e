import type { ErrorSentences } from '../../errors.ts';

export const files = {
  'file-too-large': ({ mostMegabytes }) => `This file is too large. Choose one of ${mostMegabytes} MB or less.`,
  'picture-broken': () => 'This photo can’t be read. It may be damaged. Take it again or choose another.',
  'picture-too-wide': ({ megapixels, mostMegapixels }) =>
    `This photo has ${megapixels} megapixels. Choose one with ${mostMegapixels} or fewer.`,
  'picture-is-heic': () =>
    'HEIC photos can’t be opened here. Set your camera to JPEG, or save a JPEG copy and add that.',
  'not-a-picture': () => 'This isn’t a photo. Choose a JPEG, PNG or WebP file.',
  'not-a-pdf': () => 'This PDF isn’t complete. Save it again, then choose the new copy.',
  'file-blanked': () => 'This photo was erased with the client’s data. It can’t come back.',
} satisfies Partial<ErrorSentences>;
