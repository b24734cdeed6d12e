import { Refusal } from '../refusal.ts';

/** Leaves a command's transaction without a trace, so that what takes long is reckoned while nobody is locked out; then the command runs again. */
export class ReckonFirst extends Error {
  constructor(readonly reckon: () => Promise<void>) {
    super('reckon first');
  }

  /** What whoever sent the command is told where it came to nothing: the same command may be sent again. */
  static tooOften(): Refusal {
    return new Refusal('promises-moved');
  }
}
