export { dayWatch, hearInstant, serverNow, useDayHere, wakeWithDevice } from './browser-clock.ts';
