/**
 * Progress: how far an order or line has come, as a bar and in words with numbers. The bar tells its parts apart by pattern
 * as well as colour and is hidden from assistive technology, which has the words.
 */
import type { OrderKind } from '@rootclock/domain';
import { useMessages } from '../../../messages/index.ts';
import { Badge } from '../../../ui/feedback/index.ts';
import { partsOf, type Counted, type Part } from './progress-parts.ts';
import './progress.css';

export function useProgressWords(kind: OrderKind) {
  const { promises } = useMessages();
  const delivered = kind === 'installation' ? promises.marks.planted : promises.marks.handedOver;
  const say: Record<Part, (count: number) => string> = {
    delivered,
    staged: promises.marks.pulled,
    reserved: promises.marks.reserved,
    short: promises.marks.short,
  };
  return (counted: Counted): string[] => partsOf(counted).map(({ part, units }) => say[part](units));
}

export interface ProgressProps extends Counted {
  kind: OrderKind;
  /** Names the bar's numbers for those who jump from list to list. */
  label?: string;
}

export function Progress({ kind, label, ...counted }: ProgressProps) {
  const { promises } = useMessages();
  const words = useProgressWords(kind);
  const parts = partsOf(counted);
  const texts = words(counted);
  if (parts.length === 0) return null;
  return (
    <div className="progress">
      <div className="progress-bar" aria-hidden="true">
        {parts.map(({ part, units }) => (
          <span key={part} className={`progress-part progress-${part}`} style={{ flexGrow: units }} />
        ))}
      </div>
      <ul className="progress-words" aria-label={label ?? promises.marks.progress}>
        {parts.map(({ part }, index) => (
          <li key={part} className="progress-word">
            <span className={`progress-key progress-${part}`} aria-hidden="true" />
            {texts[index]}
          </li>
        ))}
      </ul>
    </div>
  );
}

/** The one word that says where an order stands: what is short goes before all else. */
export function StateBadge({ state, kind, ...counted }: Counted & { state: string; kind: OrderKind }) {
  const { orders, promises } = useMessages();
  const { wantedUnits: wanted, shortUnits: short, stagedUnits: staged, deliveredUnits: delivered } = counted;
  if (state === 'cancelled') return <Badge shape="open">{orders.states.cancelled}</Badge>;
  if (state === 'done') return <Badge shape="full">{orders.states.done}</Badge>;
  if (wanted === 0) return <Badge shape="open">{promises.marks.noLines}</Badge>;
  if (short > 0) return <Badge shape="over">{promises.marks.short(short)}</Badge>;
  if (delivered >= wanted)
    return (
      <Badge shape="full">
        {kind === 'installation' ? promises.marks.allPlanted(delivered) : promises.marks.allHandedOver(delivered)}
      </Badge>
    );
  if (staged > 0)
    return (
      <Badge shape="half">
        {staged + delivered >= wanted && delivered === 0
          ? promises.marks.allPulled(staged)
          : promises.marks.pulled(staged)}
      </Badge>
    );
  if (delivered > 0)
    return (
      <Badge shape="half">
        {kind === 'installation' ? promises.marks.planted(delivered) : promises.marks.handedOver(delivered)}
      </Badge>
    );
  return <Badge shape="tied">{promises.marks.allReserved(wanted)}</Badge>;
}
