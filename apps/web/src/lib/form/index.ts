export type { FieldWords } from './clash.tsx';
export { Submit, type SubmitProps } from './submit.tsx';
export { useCommandForm } from './use-command-form.ts';
