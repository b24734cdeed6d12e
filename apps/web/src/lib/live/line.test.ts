import { LIVE_BEAT_MS, type LiveWord } from '@rootclock/contracts';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { LiveLine, SILENT_MS } from './line.ts';

/** A world of which the test holds the clock, the chance and the server. */
function world(chance = () => 1) {
  let now = 0;
  const timers = new Set<{ at: number; run: () => void }>();
  const streams: { take(word: LiveWord): void; lost(reason: unknown): void; isOpen: boolean; openedAt: number }[] = [];
  const told = { stale: [] as ('all' | readonly string[])[], signedOut: 0 };
  const line = new LiveLine({
    subscribe: (take, lost) => {
      const stream = { take, lost, isOpen: true, openedAt: now };
      streams.push(stream);
      return () => void (stream.isOpen = false);
    },
    after: (ms, run) => {
      const timer = { at: now + ms, run };
      timers.add(timer);
      return () => void timers.delete(timer);
    },
    chance,
    stale: (which) => void told.stale.push(which),
    signedOut: () => void (told.signedOut += 1),
  });
  const pass = (ms: number) => {
    const until = now + ms;
    for (;;) {
      const [next] = [...timers].filter(({ at }) => at <= until).sort((a, b) => a.at - b.at);
      if (!next) break;
      now = next.at;
      timers.delete(next);
      next.run();
    }
    now = until;
  };
  const current = () => streams.findLast(({ isOpen }) => isOpen);
  return { line, pass, streams, current, told, timers, opened: () => streams.map(({ openedAt }) => openedAt) };
}

const cut = new Error('the line broke');
const over = { data: { code: 'not-signed-in' } };

describe('the line of changes', () => {
  it('comes back after each loss, after pauses that grow to half a minute', () => {
    const { line, pass, current, opened } = world();
    line.open();
    const pauses = Array.from({ length: 8 }, () => {
      const lostAt = opened().at(-1) ?? 0;
      current()?.lost(cut);
      while (!current()) pass(100);
      return (opened().at(-1) ?? 0) - lostAt;
    });
    expect(pauses).toEqual([1_000, 2_000, 4_000, 8_000, 16_000, 30_000, 30_000, 30_000]);
  });

  it('draws the pause by chance', () => {
    const pauseBy = (chance: number) => {
      const { line, pass, current, opened } = world(() => chance);
      line.open();
      current()?.lost(cut);
      pass(5_000);
      return opened()[1];
    };
    expect([0, 0.5, 1].map(pauseBy)).toEqual([500, 750, 1_000]);
  });

  it('comes back quickly again once it held until a beat', () => {
    const { line, pass, current, opened } = world();
    line.open();
    for (let round = 0; round < 5; round++) {
      current()?.lost(cut);
      pass(20_000);
    }
    current()?.take({ version: 3 });
    pass(LIVE_BEAT_MS);
    current()?.take({ version: 3 });
    current()?.lost(cut);
    const before = opened().length;
    pass(1_000);
    expect(opened().length).toBe(before + 1);
  });

  it('is not tried ever faster where it opens and breaks at once', () => {
    const { line, pass, current, opened } = world(() => 0);
    line.open();
    for (let round = 0; round < 60; round++) {
      current()?.take({ version: 3 });
      current()?.lost(cut);
      pass(250);
    }
    expect(opened().length).toBeLessThanOrEqual(15);
  });

  it.each([
    ['before the first word', 0],
    ['after a word', 1],
  ])('notices a silence %s', (_, words) => {
    const { line, pass, current, streams } = world();
    line.open();
    for (let word = 0; word < words; word++) current()?.take({ version: 3 });
    pass(SILENT_MS);
    expect(current()).toBeUndefined();
    pass(1_000);
    expect(streams.map(({ isOpen }) => isOpen)).toEqual([false, true]);
  });

  it('is left alone while beats come', () => {
    const { line, pass, current, streams } = world();
    line.open();
    for (let beat = 0; beat < 20; beat++) {
      current()?.take({ version: 3 });
      pass(LIVE_BEAT_MS);
    }
    expect(streams).toHaveLength(1);
  });

  it('reads everything again when it came back, whatever the new server knows', () => {
    const { line, pass, current, told } = world();
    line.open();
    current()?.take({ version: 7 });
    current()?.lost(cut);
    pass(1_000);
    current()?.take({ version: 0 });
    expect(told.stale).toEqual([[], 'all']);
  });

  it('reads everything again when it could be opened late only: what was read before may have changed meanwhile', () => {
    const { line, pass, current, told } = world();
    line.open();
    current()?.lost(cut);
    pass(1_000);
    current()?.take({ version: 9 });
    expect(told.stale).toEqual(['all']);
  });

  it('tells that the session is over, and asks again later in case somebody signs in elsewhere', () => {
    const { line, pass, current, told, streams } = world();
    line.open();
    current()?.lost(over);
    expect(told.signedOut).toBe(1);
    pass(1_000);
    expect(streams).toHaveLength(2);
  });

  it('takes no word for the end of a session but the server’s own', () => {
    const { line, current, told } = world();
    line.open();
    current()?.lost({ meta: { response: { status: 401 } } });
    expect(told.signedOut).toBe(0);
  });

  it('does not sit out its pause when the network is said to be back', () => {
    const { line, current, streams } = world();
    line.open();
    line.hurry();
    expect(streams).toHaveLength(1);
    current()?.lost(cut);
    line.hurry();
    expect(streams).toHaveLength(2);
  });

  it('has at most one stream and one timer, and none when it is closed, whatever happens in whatever order', () => {
    const happening = fc.constantFrom('open', 'close', 'hurry', 'lost', 'late', 'word', 'beat', 'over', 'pass');
    fc.assert(
      fc.property(fc.array(happening, { maxLength: 60 }), (happenings) => {
        const { line, pass, current, streams, timers } = world(() => 0.5);
        let isWanted = false;
        for (const each of happenings) {
          if (each === 'open') line.open();
          if (each === 'close') line.close();
          if (each === 'hurry') line.hurry();
          if (each === 'lost') current()?.lost(cut);
          if (each === 'late') streams[0]?.lost(cut);
          if (each === 'word') current()?.take({ version: streams.length, features: ['stock'] });
          if (each === 'beat') current()?.take({ version: streams.length });
          if (each === 'over') current()?.lost(over);
          if (each === 'pass') pass(7_000);
          isWanted = each === 'open' || (isWanted && each !== 'close');
          expect(streams.filter(({ isOpen }) => isOpen).length).toBeLessThanOrEqual(isWanted ? 1 : 0);
          expect(timers.size).toBe(isWanted ? 1 : 0);
        }
        if (!isWanted) return;
        pass(60_000);
        expect(streams.at(-1)?.openedAt).toBeGreaterThan(0);
      }),
    );
  });
});
