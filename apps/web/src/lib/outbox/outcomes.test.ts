import { describe, expect, it } from 'vitest';
import { type Outcome, transportBy } from './transport.ts';

describe('what the server answers', () => {
  const entry = {
    id: 'a',
    name: 'stock.move',
    title: '',
    body: {},
    personId: 'ann',
    enteredAt: 0,
    creates: [],
    from: '/',
    tries: 0,
    dueAt: 0,
    parked: null,
  };
  const failing = async (error: unknown, tries = 0): Promise<Outcome | undefined> => {
    const fail = async () => {
      throw error;
    };
    const transport = transportBy({ send: fail, sendTogether: fail, sendWithBytes: fail, bytesOf: async () => null });
    return (await transport([{ ...entry, tries }]))[0];
  };
  const answered = (data: unknown, tries = 0) => failing({ data }, tries);

  it('is asked for again when the outcome is unknown', async () => {
    expect(await answered({ code: 'outcome-unknown', requestId: 'r' })).toMatchObject({ kind: 'lost' });
  });

  it('is asked for again when the line broke', async () => {
    expect(await failing(new TypeError('Failed to fetch'))).toMatchObject({ kind: 'lost' });
  });

  it('is final when it is a refusal, with its numbers', async () => {
    const outcome = await answered({ code: 'not-enough-units', data: { wanted: 13, available: 12 }, requestId: 'r' });
    expect(outcome).toMatchObject({ kind: 'refused', failure: { data: { wanted: 13, available: 12 } } });
  });

  it('is tried a few times when the server stumbled, then parked', async () => {
    const kinds = await Promise.all(
      [0, 1, 2, 3].map(async (tries) => (await answered({ code: 'fault', requestId: 'r' }, tries))?.kind),
    );
    expect(kinds).toEqual(['lost', 'lost', 'lost', 'refused']);
  });

  it('waits for a sign-in when the session is over', async () => {
    expect(await answered({ code: 'not-signed-in', requestId: 'r' })).toEqual({ kind: 'signed-out' });
  });
});
