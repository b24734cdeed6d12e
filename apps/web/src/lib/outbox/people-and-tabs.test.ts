// Several people, several tabs, one browser: one cookie and one outbox for all of them, and a line that loses answers. Whatever happens in whatever
// order, each entry takes effect once and in its own person's name.
import type { EntryOutcome, ErrorAnswer } from '@rootclock/contracts';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { CommandError } from '../api/failure.ts';
import { Outbox } from './outbox.ts';
import { memoryStorage } from './storage.ts';
import { transportBy } from './transport.ts';

const PEOPLE = ['ann', 'ben', 'cleo'] as const;
type Person = (typeof PEOPLE)[number];
const TABS = 3;

type Deed =
  | { kind: 'sign-in'; tab: number; person: Person }
  | { kind: 'sign-out'; tab: number }
  /** The session ends elsewhere, and no tab knows. */
  | { kind: 'session-ends' }
  | { kind: 'enter'; tab: number }
  | { kind: 'leave-form'; tab: number }
  /** A tab learns whose session it is, late or never. */
  | { kind: 'reload'; tab: number }
  | { kind: 'line'; does: 'lose-answer' | 'lose-question' | 'down' | 'up' }
  | { kind: 'answer-late' }
  | { kind: 'pass'; ms: number }
  | { kind: 'hurry'; tab: number };

const tabs = fc.nat({ max: TABS - 1 });
const deed: fc.Arbitrary<Deed> = fc.oneof(
  {
    weight: 3,
    arbitrary: fc.record({ kind: fc.constant('sign-in' as const), tab: tabs, person: fc.constantFrom(...PEOPLE) }),
  },
  { weight: 1, arbitrary: fc.record({ kind: fc.constant('sign-out' as const), tab: tabs }) },
  { weight: 1, arbitrary: fc.constant({ kind: 'session-ends' as const }) },
  { weight: 6, arbitrary: fc.record({ kind: fc.constant('enter' as const), tab: tabs }) },
  { weight: 1, arbitrary: fc.record({ kind: fc.constant('leave-form' as const), tab: tabs }) },
  { weight: 1, arbitrary: fc.record({ kind: fc.constant('reload' as const), tab: tabs }) },
  {
    weight: 3,
    arbitrary: fc.record({
      kind: fc.constant('line' as const),
      does: fc.constantFrom('lose-answer' as const, 'lose-question' as const, 'down' as const, 'up' as const),
    }),
  },
  { weight: 2, arbitrary: fc.constant({ kind: 'answer-late' as const }) },
  {
    weight: 2,
    arbitrary: fc.record({ kind: fc.constant('pass' as const), ms: fc.integer({ min: 500, max: 61_000 }) }),
  },
  { weight: 1, arbitrary: fc.record({ kind: fc.constant('hurry' as const), tab: tabs }) },
);

const turnOfTheLoop = () => new Promise<void>((resolve) => setImmediate(resolve));

/** The browser with its one cookie, the server behind it, and the line between them. */
function world() {
  const booked: { id: string; owner: string; person: Person }[] = [];
  const line = { losesAnswers: 0, losesQuestions: 0, down: false };
  let cookie: Person | null = null;
  let now = 0;
  let timers: { at: number; run: () => void }[] = [];
  const held: (() => void)[] = [];
  let holds = false;
  let locked: Promise<void> = Promise.resolve();
  const storage = memoryStorage();

  /** The server: by the cookie that the question brought, and by the person that the envelope names. */
  const serve = (id: string, owner: string, asked: Person | null, personId: string | undefined): unknown => {
    if (asked === null) throw new CommandError({ code: 'not-signed-in', class: 'access' });
    if (personId !== undefined && personId !== asked)
      throw new CommandError({ code: 'another-person', class: 'access' });
    const known = booked.find((each) => each.id === id);
    if (known && known.person !== asked) throw new CommandError({ code: 'command-id-reused', class: 'refusal' });
    if (!known) booked.push({ id, owner, person: asked });
    return { id };
  };
  const lost = new CommandError({ code: 'no-answer', class: 'retry' });
  /** One request over the line, by the cookie that the browser has when it leaves. */
  const request = async <Answer>(serveIt: (asked: Person | null) => Answer): Promise<Answer> => {
    const asked = cookie;
    if (holds) await new Promise<void>((resolve) => held.push(resolve));
    if (line.down) throw lost;
    if (line.losesQuestions > 0) {
      line.losesQuestions -= 1;
      throw lost;
    }
    const answer = serveIt(asked);
    if (line.losesAnswers > 0) {
      line.losesAnswers -= 1;
      throw lost;
    }
    return answer;
  };
  const ownerOf = (body: unknown) => (body as { owner: string }).owner;
  const transport = transportBy({
    send: (_name, id, body, personId) => request((asked) => serve(id, ownerOf(body), asked, personId)),
    sendTogether: (entries) =>
      request((asked) => {
        const outcomes: EntryOutcome[] = [];
        for (const { id, body, personId } of entries)
          try {
            outcomes.push({ kind: 'answered', answer: serve(id, ownerOf(body), asked, personId) });
          } catch (error) {
            if (!(error instanceof CommandError)) throw error;
            const failure = { ...error.failure, requestId: 'r' } as ErrorAnswer;
            outcomes.push({ kind: 'refused', failure });
            if (failure.class === 'access') break;
          }
        return outcomes;
      }),
    sendWithBytes: () => Promise.reject(lost),
    bytesOf: async () => null,
  });

  const openTab = () => {
    const outbox = new Outbox({
      storage,
      transport,
      // One drain in all tabs, as the browser's own locks do it.
      lock: (work) => {
        const mine = locked.then(work);
        locked = mine.catch(() => {});
        return mine;
      },
      channel: { post: () => {}, listen: () => {} },
      now: () => now,
      later: (run, ms) => void timers.push({ at: now + ms, run }),
      onAnswered: () => {},
      onParked: () => {},
      onAnotherPerson: () => {},
    });
    return { outbox, person: null as Person | null, last: null as string | null };
  };

  const settled = async () => {
    for (let turn = 0; turn < 4; turn += 1) await turnOfTheLoop();
  };
  const pass = async (ms: number) => {
    now += ms;
    const due = timers.filter(({ at }) => at <= now);
    timers = timers.filter(({ at }) => at > now);
    for (const { run } of due) run();
    await settled();
  };
  const release = () => {
    holds = false;
    for (const go of held.splice(0)) go();
  };
  return {
    booked,
    line,
    storage,
    openTab,
    pass,
    settled,
    release,
    hold: () => void (holds = true),
    sessionOf: () => cookie,
    open: (person: Person | null) => void (cookie = person),
  };
}

async function play(deeds: readonly Deed[]) {
  const shared = world();
  const open = Array.from({ length: TABS }, () => shared.openTab());
  const entered: { id: string; owner: Person }[] = [];
  const tabOf = (index: number) => open[index] as (typeof open)[number];
  const own = (index: number, person: Person | null) => {
    const tab = tabOf(index);
    tab.person = person;
    void tab.outbox.signedInAs(person);
  };
  for (const each of deeds) {
    if (each.kind === 'sign-in') {
      shared.open(each.person);
      own(each.tab, each.person);
    } else if (each.kind === 'sign-out') {
      shared.open(null);
      own(each.tab, null);
    } else if (each.kind === 'session-ends') shared.open(null);
    else if (each.kind === 'reload') {
      open[each.tab] = shared.openTab();
      own(each.tab, shared.sessionOf());
    } else if (each.kind === 'enter') {
      const tab = tabOf(each.tab);
      if (tab.person === null) continue;
      const id = `entry-${entered.length}`;
      entered.push({ id, owner: tab.person });
      tab.last = id;
      tab.outbox
        .enter({ id, name: 'stock.move', title: '', body: { owner: tab.person }, creates: [], from: '/' })
        .catch(() => {});
    } else if (each.kind === 'leave-form') {
      const tab = tabOf(each.tab);
      if (tab.last) tab.outbox.release(tab.last);
    } else if (each.kind === 'line') {
      if (each.does === 'lose-answer') shared.line.losesAnswers += 1;
      if (each.does === 'lose-question') shared.line.losesQuestions += 1;
      if (each.does === 'down' || each.does === 'up') shared.line.down = each.does === 'down';
    } else if (each.kind === 'answer-late') shared.hold();
    else if (each.kind === 'pass') {
      shared.release();
      await shared.pass(each.ms);
    } else void tabOf(each.tab).outbox.hurry();
    await shared.settled();
  }
  // In the end the line is good and everybody signs in once more, in a tab of their own.
  shared.release();
  shared.line.down = false;
  shared.line.losesAnswers = 0;
  shared.line.losesQuestions = 0;
  await shared.settled();
  for (const person of PEOPLE) {
    shared.open(person);
    const tab = shared.openTab();
    void tab.outbox.signedInAs(person);
    for (let round = 0; round < 3; round += 1) await shared.pass(61_000);
  }
  return { booked: shared.booked, entered, left: await shared.storage.read() };
}

describe('entries of several people in one browser', () => {
  it('take effect once each, in the name of whoever made them, and none is lost', async () => {
    await fc.assert(
      fc.asyncProperty(fc.array(deed, { minLength: 1, maxLength: 40 }), async (deeds) => {
        const { booked, entered, left } = await play(deeds);
        expect(booked.filter(({ owner, person }) => owner !== person)).toEqual([]);
        expect(booked.map(({ id }) => id).toSorted()).toEqual(entered.map(({ id }) => id).toSorted());
        expect(left).toEqual([]);
      }),
      { numRuns: 300 },
    );
  }, 120_000);
});
