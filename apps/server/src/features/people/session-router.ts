import { people } from '@rootclock/contracts';
import * as z from 'zod/mini';
import { derivedId } from '../../derived-id.ts';
import { type Envelope, parseEnvelope, parseInput } from '../../trpc/input.ts';
import {
  aloneProcedure,
  answered,
  checked,
  openProcedure,
  type RequestContext,
  signedIn,
  signedInAs,
} from '../../trpc/procedures.ts';
import { loadReference } from '../pot-life/rules/commands/load-reference.ts';
import { loadReferenceProtocols } from '../propagation/protocols/commands/load-reference-protocols.ts';
import { createCalendar, endCalendar, readCalendarAddress } from './calendar-address.ts';
import { changeOwnPassword } from './commands/change-own-password.ts';
import { DEMO_SIGN_INS } from './demo-sign-ins.ts';
import type { Guesser } from './door/guessing.ts';
import { endSession, listSessions, openSession, signOut } from './door/sessions.ts';
import { readNursery } from './reads.ts';
import { beginSecondStep, endSecondStep, finishSecondStep, readSecondStep } from './second-step/second-step.ts';
import { changePasswordOf, createFirstOwner, signIn } from './sign-in.ts';
import { setupFacts } from './store.ts';

// These open and end sessions, most before anyone is signed in; each is harmless when sent twice.

const nothing = z.optional(z.nullable(z.object({})));
interface Sent<Body> {
  commandId: string;
  personId?: string;
  body: Body;
}

/** A parser that tells the browser's types what is sent and the procedure's what arrives. */
function sent<Schema extends z.ZodMiniType>(schema: Schema) {
  return { parse: checked((raw) => parseEnvelope(schema, raw)) } as unknown as {
    _input: Sent<z.input<Schema>>;
    _output: Envelope<z.output<Schema>>;
    parse(raw: unknown): unknown;
  };
}

/** The id of the command that follows another one of the same asking, the same each time. */
const idAfter = (commandId: string): string => derivedId('after', commandId);

const guesserOf = ({ database, door, address, runner }: RequestContext): Guesser => ({
  database,
  door,
  address,
  now: runner.clock(),
});

export const sessionProcedures = {
  setupState: openProcedure.input(checked((raw) => parseInput(nothing, raw))).query(({ ctx }) =>
    answered(async () => {
      const facts = await setupFacts(ctx.database);
      return { needsFirstOwner: !facts.anyNursery, demo: facts.demo, demoSignIns: facts.demo ? DEMO_SIGN_INS : [] };
    }),
  ),
  me: openProcedure.input(checked((raw) => parseInput(nothing, raw))).query(({ ctx }) =>
    answered(async () => {
      const caller = signedIn(ctx);
      const nursery = await ctx.runner.read(readNursery, caller, {});
      return {
        person: { id: caller.personId, name: caller.personName, email: caller.email },
        role: caller.role,
        nursery,
      };
    }),
  ),
  signIn: aloneProcedure.input(sent(people.signIn)).mutation(({ ctx, input }) =>
    answered(async () => {
      await signIn(guesserOf(ctx), input.body);
      return { signedIn: true };
    }),
  ),
  signOut: openProcedure.input(sent(z.strictObject({}))).mutation(({ ctx, input }) =>
    answered(async () => {
      if (ctx.caller) signedInAs(ctx, input.personId);
      await signOut(ctx.database, ctx.door, ctx.runner.clock());
      return { signedIn: false };
    }),
  ),
  createFirstOwner: aloneProcedure.input(sent(people.createFirstOwner)).mutation(({ ctx, input }) =>
    answered(async () => {
      const guesser = guesserOf(ctx);
      const owner = await createFirstOwner(guesser, input.body);
      const inputHash = await input.inputHash();
      // What the nursery begins with is written by its owner's first command, like everything after it.
      await ctx.runner.run(loadReference, owner, input.commandId, {}, inputHash);
      await ctx.runner.run(loadReferenceProtocols, owner, idAfter(input.commandId), {}, inputHash);
      await openSession(ctx.database, owner, ctx.door, guesser.now);
      return { signedIn: true };
    }),
  ),
  changeOwnPassword: aloneProcedure.input(sent(people.changeOwnPassword)).mutation(({ ctx, input }) =>
    answered(async () => {
      const caller = signedInAs(ctx, input.personId);
      const { password } = input.body;
      await changePasswordOf(guesserOf(ctx), caller, input.body, async (hashes) =>
        ctx.runner.run(changeOwnPassword, caller, input.commandId, { password, ...hashes }, await input.inputHash()),
      );
      return { changed: true };
    }),
  ),
  listSessions: openProcedure
    .input(checked((raw) => parseInput(nothing, raw)))
    .query(({ ctx }) => answered(async () => listSessions(ctx.database, signedIn(ctx), ctx.door, ctx.runner.clock()))),
  endSession: openProcedure
    .input(sent(people.endSession))
    .mutation(({ ctx, input }) =>
      answered(async () =>
        endSession(ctx.database, signedInAs(ctx, input.personId), input.body.sessionId, ctx.door, ctx.runner.clock()),
      ),
    ),
  endOtherSessions: openProcedure
    .input(sent(people.endOtherSessions))
    .mutation(({ ctx, input }) =>
      answered(async () =>
        endSession(ctx.database, signedInAs(ctx, input.personId), null, ctx.door, ctx.runner.clock()),
      ),
    ),
  readSecondStep: openProcedure
    .input(checked((raw) => parseInput(nothing, raw)))
    .query(({ ctx }) => answered(async () => readSecondStep(ctx.database, signedIn(ctx)))),
  beginSecondStep: aloneProcedure
    .input(sent(people.beginSecondStep))
    .mutation(({ ctx, input }) =>
      answered(async () => beginSecondStep(guesserOf(ctx), signedInAs(ctx, input.personId), input.body.password)),
    ),
  finishSecondStep: aloneProcedure
    .input(sent(people.finishSecondStep))
    .mutation(({ ctx, input }) =>
      answered(async () => finishSecondStep(guesserOf(ctx), signedInAs(ctx, input.personId), input.body.code)),
    ),
  endSecondStep: aloneProcedure
    .input(sent(people.endSecondStep))
    .mutation(({ ctx, input }) =>
      answered(async () => endSecondStep(guesserOf(ctx), signedInAs(ctx, input.personId), input.body)),
    ),
  readCalendarAddress: openProcedure
    .input(checked((raw) => parseInput(nothing, raw)))
    .query(({ ctx }) => answered(async () => readCalendarAddress(ctx.database, signedIn(ctx), ctx.runner.clock()))),
  createCalendarAddress: openProcedure.input(sent(people.createCalendarAddress)).mutation(({ ctx, input }) =>
    answered(async () => ({
      ...(await createCalendar(ctx.database, signedInAs(ctx, input.personId), ctx.runner.clock())),
      origin: ctx.publicOrigin ?? null,
    })),
  ),
  revokeCalendarAddress: openProcedure
    .input(sent(people.revokeCalendarAddress))
    .mutation(({ ctx, input }) =>
      answered(async () => endCalendar(ctx.database, signedInAs(ctx, input.personId), ctx.runner.clock())),
    ),
};
