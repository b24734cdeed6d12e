// A worker thread inherits no loader that was registered while the server ran, so it brings its own: the same in development, in tests and in use.
import { register } from 'tsx/esm/api';

register();
await import('./work.ts');
