/** Something a person can mend; its message is the whole of what they are told. */
export class CommandFailure extends Error {
  override name = 'CommandFailure';
}
