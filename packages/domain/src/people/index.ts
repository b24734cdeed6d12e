export * from './roles.ts';
export * from './season.ts';
