/** A backup that cannot be taken or brought back. The message is for whoever asked, and says what to do. */
export class BackupFailure extends Error {
  override name = 'BackupFailure';
}
