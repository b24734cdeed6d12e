import { createHash, randomBytes } from 'node:crypto';
import { verifySync } from 'otplib';

/** Seconds by which the clocks of app and server may differ: a code of the half minute before and after works too. */
const CLOCK_TOLERANCE = 30;
const RECOVERY_CODES = 10;
/** Letters and digits that cannot be taken for each other on paper. */
const LETTERS = '23456789ABCDEFGHJKMNPQRSTUVWXYZ';
const GROUPS = 4;
const GROUP_LETTERS = 4;

/**
 * The half minute since 1970 that a six-digit code is of (RFC 6238, SHA-1, 30 s), or null for a code that is of none near now, or of one
 * from which a code was taken already.
 */
export function stepOf(secret: string, code: string, now: Date, lastStep: number): number | null {
  if (!/^\d{6}$/.test(code)) return null;
  const epoch = Math.floor(now.getTime() / 1000);
  const found = verifySync({
    secret,
    token: code,
    epoch,
    epochTolerance: CLOCK_TOLERANCE,
    ...(lastStep > 0 ? { afterTimeStep: lastStep } : {}),
  });
  return found.valid && 'timeStep' in found ? found.timeStep : null;
}

/** As it was typed from a screen or from paper: groups and capitals are no content. */
export const plainCode = (typed: string) => typed.normalize('NFKC').replaceAll(/[\s-]/g, '').toUpperCase();

/** Such a code has 79 random bits, so that a fast hash keeps it as well as a slow one would. */
export const recoveryHash = (code: string) => createHash('sha256').update(plainCode(code)).digest();

function recoveryCode(): string {
  const group = () => {
    let letters = '';
    while (letters.length < GROUP_LETTERS) {
      const [byte = 0] = randomBytes(1);
      // A byte beyond the last whole round of the letters would make some of them likelier.
      if (byte < 256 - (256 % LETTERS.length)) letters += LETTERS[byte % LETTERS.length];
    }
    return letters;
  };
  return Array.from({ length: GROUPS }, group).join('-');
}

export const recoveryCodes = (): string[] => Array.from({ length: RECOVERY_CODES }, recoveryCode);
