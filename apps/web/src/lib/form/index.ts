export { useCommandForm } from './use-command-form.ts';
