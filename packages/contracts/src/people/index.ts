export * from './nursery.ts';
export * from './people.ts';
export type * from './rows.ts';
export * from './sign-in.ts';
