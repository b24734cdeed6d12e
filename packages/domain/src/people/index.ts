export * from './roles.ts';
