export { Read, ReadFailed } from './read.tsx';
