/** TrayLook: how many cells stay empty, hold one or several, as a bar told apart by pattern and in words with numbers. */
import type { CellOutcomes } from '@rootclock/domain';
import { useFormat } from '../../../../lib/format/index.ts';
import { useMessages } from '../../../../messages/index.ts';
import './sowing.css';

const PARTS = ['single', 'multiple', 'empty'] as const;

export function TrayLook({ outcomes }: { outcomes: CellOutcomes }) {
  const { sowing } = useMessages().seed;
  const { numbers } = useFormat();
  const cells = outcomes.empty + outcomes.single + outcomes.multiple;
  return (
    <div className="tray-look">
      <p className="tray-look-title">{sowing.looks}</p>
      <div className="tray-look-bar" aria-hidden="true">
        {PARTS.filter((part) => outcomes[part] >= 0.005 * cells).map((part) => (
          <span key={part} className={`tray-look-part tray-look-${part}`} style={{ flexGrow: outcomes[part] }} />
        ))}
      </div>
      <ul className="tray-look-words">
        {PARTS.map((part) => (
          <li key={part}>
            <span className={`tray-look-key tray-look-${part}`} aria-hidden="true" />
            {sowing[part](numbers.count(Math.round(outcomes[part])), numbers.share(outcomes[part] / cells))}
          </li>
        ))}
      </ul>
    </div>
  );
}
