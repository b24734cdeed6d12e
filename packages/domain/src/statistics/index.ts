export { logGamma } from './log-gamma.ts';
export { incompleteBeta, type Tails } from './incomplete-beta.ts';
export { betaQuantile, gammaQuantile, normalQuantile } from './quantiles.ts';
export { binomialUpperTail } from './binomial.ts';
export { betaBinomialUpperTail, type Shapes } from './beta-binomial.ts';
export * from './pass-share.ts';
export { survivalCurve, type SurvivalCurve, type SurvivalObservation, type SurvivalStep } from './survival-curve.ts';
export * from './time-to-quantiles.ts';
export * from './loss-rate.ts';
