/** Where the bytes of pictures and papers lie, each content once a nursery, under the SHA-256 of what it is. */
export interface FileStore {
  /** Keeps the bytes and answers their hash; when it answers they are on disk for good. The same bytes may be put again. */
  put(nurseryId: string, bytes: Uint8Array): Promise<string>;
  /** Null where the store holds nothing under this hash. */
  read(nurseryId: string, sha256: string): Promise<Buffer | null>;
  /** How many bytes it holds under this hash, null for nothing. */
  size(nurseryId: string, sha256: string): Promise<number | null>;
  list(): AsyncIterable<StoredFile>;
  /** Harmless where there is nothing. */
  remove(nurseryId: string, sha256: string): Promise<void>;
  /** Throws away what a write that was cut off has left, older than the instant given. */
  clearUnfinished(before: Date): Promise<void>;
}

export interface StoredFile {
  nurseryId: string;
  sha256: string;
  bytes: number;
  /** When it was last put. */
  putAt: Date;
}

/** The store of one nursery, as its commands see it. */
export interface NurseryFiles {
  put(bytes: Uint8Array): Promise<string>;
  read(sha256: string): Promise<Buffer | null>;
  size(sha256: string): Promise<number | null>;
}

export const filesOf = (store: FileStore, nurseryId: string): NurseryFiles => ({
  put: (bytes) => store.put(nurseryId, bytes),
  read: (sha256) => store.read(nurseryId, sha256),
  size: (sha256) => store.size(nurseryId, sha256),
});

/** For a runner of which no command brings or shows files. */
export const noFiles: FileStore = {
  put: () => Promise.reject(new Error('this runner was given no store for files')),
  read: async () => null,
  size: async () => null,
  async *list() {},
  remove: async () => {},
  clearUnfinished: async () => {},
};
