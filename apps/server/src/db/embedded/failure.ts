/** The embedded database cannot be had; the message is for the person who started Rootclock and says what to do. */
export class EmbeddedFailure extends Error {
  override name = 'EmbeddedFailure';
}
