/** The names, bodies and answers of all commands, taken from the server's router: a command that is renamed there does not compile here. */
import type { AppRouter } from '@rootclock/server/router';
import type { inferRouterInputs, inferRouterOutputs } from '@trpc/server';

type Inputs = inferRouterInputs<AppRouter>;
type Outputs = inferRouterOutputs<AppRouter>;

/** Only commands carry a command id. */
type CommandsOf<Feature extends keyof Inputs & string> = {
  [Procedure in keyof Inputs[Feature] & string]: Inputs[Feature][Procedure] extends { commandId: string }
    ? `${Feature}.${Procedure}`
    : never;
}[keyof Inputs[Feature] & string];

export type CommandName = { [Feature in keyof Inputs & string]: CommandsOf<Feature> }[keyof Inputs & string];

/** A file goes beside its entry and not within it. */
type WithoutFile<Body> = Body extends { bytes: Uint8Array } ? Omit<Body, 'bytes'> : Body;

export type CommandBody<Name extends CommandName> = Name extends `${infer Feature}.${infer Procedure}`
  ? Feature extends keyof Inputs
    ? Procedure extends keyof Inputs[Feature]
      ? Inputs[Feature][Procedure] extends { body: infer Body }
        ? WithoutFile<Body>
        : never
      : never
    : never
  : never;

export type CommandAnswer<Name extends CommandName> = Name extends `${infer Feature}.${infer Procedure}`
  ? Feature extends keyof Outputs
    ? Procedure extends keyof Outputs[Feature]
      ? Outputs[Feature][Procedure]
      : never
    : never
  : never;
