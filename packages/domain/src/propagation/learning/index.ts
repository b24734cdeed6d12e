export * from './learn-share.ts';
export * from './product-of-shares.ts';
export * from './learn-stages.ts';
