export { dayWatch, goByDevice, hearInstant, serverNow, useDayHere, wakeWithDevice } from './browser-clock.ts';
