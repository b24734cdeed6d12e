import { Refusal, refuse } from '../../../refusal.ts';
import { Thread } from '../../../thread/thread.ts';

/** A machine with much else to do may take this long to load the lists. */
const PATIENCE_MS = 60_000;
/** The lists of common passwords take a second to load and odd passwords a while to judge: a thread of its own keeps that from everybody else. */
const judge = new Thread<string, number>({
  entry: new URL('./entry.mjs', import.meta.url),
  patienceMs: PATIENCE_MS,
  tooLong: () => new Refusal('sign-ins-busy'),
});

/** What follows does not make a common beginning much harder to guess, and would only be reckoned at. */
const JUDGED_LETTERS = 40;
/** Of five grades, from 0: from this one on at least a million guesses are needed, which the limits at the door allow nobody. */
const LEAST_GRADE = 2;

/** Refuses what is on the lists of passwords that were stolen elsewhere, or is so simple that it is among the first to be tried. */
export async function requireUncommon(password: string, field = 'password'): Promise<void> {
  const grade = await judge.ask(password.normalize('NFKC').slice(0, JUDGED_LETTERS));
  if (grade < LEAST_GRADE) refuse('common-password', undefined, field);
}

const letters = (text: string) =>
  text
    .normalize('NFKC')
    .toLowerCase()
    .replaceAll(/[^\p{L}\p{N}]/gu, '');
/** Shorter names are in too many words that have nothing to do with them. */
const LEAST_NAME = 4;

export interface KnownNames {
  name: string;
  email: string;
  nurseryName: string;
}

/** Refuses a password that holds what everybody here knows: the person's name, the beginning of their address, or the nursery's name. */
export function requireNoKnownName(
  password: string,
  { name, email, nurseryName }: KnownNames,
  field = 'password',
): void {
  const known = [name, ...name.split(/\s+/), email.split('@')[0] ?? '', nurseryName]
    .map(letters)
    .filter((each) => each.length >= LEAST_NAME);
  const typed = letters(password);
  if (known.some((each) => typed.includes(each))) refuse('known-name-password', undefined, field);
}
