/**
 * Toasts: one short sentence after something was done, with undo where it can be undone. `toast({ text, undo })` may be called
 * from anywhere; one ToastRegion stands in the shell. A toast with undo stays until it is dismissed or used: nobody
 * should have to race a clock to take something back.
 */
import { useEffect, useSyncExternalStore } from 'react';
import { useMessages } from '../../messages/index.ts';
import { Button } from '../action/button.tsx';
import './toast.css';

export interface ToastContent {
  text: string;
  tone?: 'saved' | 'problem';
  undo?: () => void;
  /** Another way on than undo, such as going to what needs attention. */
  action?: { label: string; onAction: () => void };
}

interface Shown extends ToastContent {
  key: number;
}

const PLAIN_MS = 6000;
const AT_MOST = 3;

let shown: readonly Shown[] = [];
let lastKey = 0;
const listeners = new Set<() => void>();
const set = (next: readonly Shown[]): void => {
  shown = next;
  for (const listener of listeners) listener();
};

export function toast(content: ToastContent): void {
  lastKey += 1;
  set([...shown, { ...content, key: lastKey }].slice(-AT_MOST));
}

const dismiss = (key: number): void => set(shown.filter((each) => each.key !== key));
const subscribe = (listener: () => void): (() => void) => {
  listeners.add(listener);
  return () => listeners.delete(listener);
};

function ToastItem({ item }: { item: Shown }) {
  const { ui } = useMessages();
  const stays = item.undo !== undefined || item.action !== undefined;
  useEffect(() => {
    if (stays) return;
    const wait = setTimeout(() => dismiss(item.key), PLAIN_MS);
    return () => clearTimeout(wait);
  }, [item.key, stays]);
  const use = (run: () => void) => {
    dismiss(item.key);
    run();
  };
  return (
    <li className={`toast toast-${item.tone ?? 'saved'}`}>
      <span className="toast-text">{item.text}</span>
      {item.undo && <Button onClick={() => use(item.undo ?? (() => {}))}>{ui.undo}</Button>}
      {item.action && <Button onClick={() => use(item.action?.onAction ?? (() => {}))}>{item.action.label}</Button>}
      <Button look="quiet" aria-label={`${ui.dismiss}: ${item.text}`} onClick={() => dismiss(item.key)}>
        ✕
      </Button>
    </li>
  );
}

export function ToastRegion() {
  const { ui } = useMessages();
  const items = useSyncExternalStore(subscribe, () => shown);
  // The mark keeps open dialogs from hiding the region from assistive technology.
  return (
    <section aria-label={ui.notices} aria-live="polite" className="toasts" data-react-aria-top-layer="true">
      <ol className="toast-list">
        {items.map((item) => (
          <ToastItem key={item.key} item={item} />
        ))}
      </ol>
    </section>
  );
}
