/** LineFlags: what is ambiguous, not native, or near livestock, each by the scientific name, so that nobody plants the wrong thing. */
import type { LineFlag } from '@rootclock/domain';
import { useMessages } from '../../../messages/index.ts';
import { Badge, Callout } from '../../../ui/feedback/index.ts';
import { Taxon } from '../../plants/taxon.tsx';

export interface FlaggedPlant {
  scientificName: string;
  flags: LineFlag[];
  namesakes: { plantId: string; scientificName: string }[];
}

const MOST_NAMED = 3;

export function LineFlags({ line, region }: { line: FlaggedPlant; region: string | null }) {
  const { promises } = useMessages();
  return line.flags.map((flag) => (
    <Callout key={flag} tone={flag === 'ambiguous-name' ? 'note' : 'caution'} title={promises.marks.flags[flag]}>
      {flag === 'ambiguous-name' && <Namesakes line={line} />}
      {flag === 'not-native' && promises.marks.notNative(line.scientificName, region)}
      {flag === 'livestock-near' && promises.marks.livestockNear(line.scientificName)}
    </Callout>
  ));
}

function Namesakes({ line: { namesakes } }: { line: FlaggedPlant }) {
  const { promises } = useMessages();
  const more = namesakes.length - MOST_NAMED;
  return (
    <p>
      {promises.marks.ambiguousName}{' '}
      {namesakes.slice(0, MOST_NAMED).map(({ plantId, scientificName }, index) => (
        <span key={plantId}>
          {index > 0 && ', '}
          <Taxon name={scientificName} />
        </span>
      ))}
      {more > 0 && ` ${promises.marks.andMore(more)}`}
    </p>
  );
}

/** The same in a word each, where the sentence stands elsewhere on the page. */
export function FlagBadges({ flags }: { flags: readonly LineFlag[] }) {
  const { promises } = useMessages();
  return flags.map((flag) => (
    <Badge key={flag} shape={flag === 'ambiguous-name' ? 'open' : 'half'}>
      {promises.marks.flags[flag]}
    </Badge>
  ));
}
