export { ConfirmAgain, type ConfirmAgainProps } from './confirm-again.tsx';
export { Dialog, Sheet, type DialogProps } from './dialog.tsx';
