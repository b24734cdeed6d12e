export { PotSign, type PotSignProps } from './pot-sign.tsx';
export { StandingMark, type StandingMarkProps } from './standing-mark.tsx';
