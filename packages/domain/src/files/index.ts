/** What a photo or a paper may belong to. */
export const FILE_SUBJECTS = ['lot', 'batch', 'place', 'plant', 'site'] as const;
export type FileSubject = (typeof FILE_SUBJECTS)[number];

export const FILE_KINDS = ['photo', 'paper'] as const;
export type FileKind = (typeof FILE_KINDS)[number];

/** A photo as it is shown: `full` is all that is kept of it, the others are made from that once. */
export const FILE_SIZES = ['thumb', 'view', 'full'] as const;
export type FileSize = (typeof FILE_SIZES)[number];

/** A phone's photo has 3 to 12 MB; what is larger comes from a scanner or was never meant to be sent. */
export const MOST_FILE_MEGABYTES = 15;
export const MOST_FILE_BYTES = MOST_FILE_MEGABYTES * 1024 * 1024;

/** More than any phone takes; a small file can claim to hold far more, and unpacking it would use up the memory. */
export const MOST_MEGAPIXELS = 100;
