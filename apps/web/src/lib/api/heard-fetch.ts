/** The way of every request: what an answer says beside its content (the server's instant, whose session it was made for) is read here. */
import { hearInstant } from '../clock/index.ts';
import { CommandError, UnsignedAnswer } from './failure.ts';
import { tabPerson, tellAnotherPerson } from './tab-person.ts';

const NOW = 'rootclock-now';
const PERSON = 'rootclock-person';

export async function heardFetch(input: RequestInfo | URL | string, init?: RequestInit): Promise<Response> {
  const sentFor = tabPerson();
  const sentAt = Date.now();
  // Our server sends nobody elsewhere: whoever does would get an entry that was never meant for them.
  const response = await fetch(input, { ...init, redirect: 'error' });
  const stampedAt = Number(response.headers.get(NOW) ?? Number.NaN);
  if (Number.isFinite(stampedAt)) hearInstant({ sentAt, receivedAt: Date.now(), stampedAt });
  refuseStrangers(response.headers.get(PERSON), sentFor);
  if (!response.headers.get('content-type')?.startsWith('application/json')) throw new UnsignedAnswer(response.status);
  return response;
}

/** Throws an answer away that was made for another person than the one this tab is of, or is of no longer. */
function refuseStrangers(answeredTo: string | null, sentFor: string | null): void {
  // A tab that opened with what was kept has become somebody's before the server said whose session it is.
  const whose = sentFor ?? tabPerson();
  const isStrange = Boolean(answeredTo) && whose !== null && answeredTo !== whose;
  // The tab has been left meanwhile: what was asked for in it is nobody's business any more.
  const isLate = sentFor !== null && sentFor !== tabPerson();
  if (isStrange && !isLate) tellAnotherPerson();
  if (isStrange || isLate) throw new CommandError({ code: 'another-person', class: 'access' });
}
