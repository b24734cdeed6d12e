export { trpc } from './client.ts';
export type { CommandAnswer, CommandBody, CommandName } from './commands.ts';
export { CommandError, issuesIn, readFailure, type Failure } from './failure.ts';
export { onSignedOut, queryClient } from './query-client.ts';
export { fieldSentences, sentenceOf } from './sentences.ts';
export { useSession, type Session } from './session.ts';
export { giveTabTo, onAnotherPerson, tabPerson } from './tab-person.ts';
