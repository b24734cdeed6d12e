export * from './orders.ts';
export * from './substitutes.ts';
export * from './kits.ts';
