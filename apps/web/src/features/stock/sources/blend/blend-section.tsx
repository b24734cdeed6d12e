/** Both ways of a blend's line: its parts with their shares, and the blends that a source went into. */
import { useFormat } from '../../../../lib/format/index.ts';
import { paths } from '../../../../lib/paths.ts';
import { useMessages } from '../../../../messages/index.ts';
import { TextLink } from '../../../../ui/action/index.ts';
import { Section } from '../../../../ui/layout/index.ts';
import { type Column, DataTable } from '../../../../ui/table/index.ts';
import type { SourceStory } from '../source-story.ts';

/** What it was made of; nothing where it is no blend. */
export function BlendParts({ source: { parts } }: { source: SourceStory }) {
  const { seed } = useMessages();
  const columns = useColumns(parts.reduce((sum, part) => sum + part.grams, 0));
  if (parts.length === 0) return null;
  return (
    <Section title={seed.parts}>
      <DataTable
        caption={seed.parts}
        quietCaption
        rows={parts}
        rowId={(part) => part.sourceId}
        rowName={(part) => part.code}
        columns={columns}
        empty={null}
      />
    </Section>
  );
}

/** What it went into; nothing where it went into no blend. */
export function BlendsOf({ source: { blends } }: { source: SourceStory }) {
  const { seed } = useMessages();
  const { numbers, measures } = useFormat();
  if (blends.length === 0) return null;
  return (
    <Section title={seed.blends}>
      <ul className="trace-list">
        {blends.map((blend) => (
          <li key={blend.sourceId}>
            <TextLink to={paths.source(blend.sourceId)}>{blend.code}</TextLink>{' '}
            {blend.takenBack
              ? seed.blendTakenBack
              : seed.blendRow(measures.seedWeight(blend.grams), numbers.part(blend.grams / blend.ofGrams))}
          </li>
        ))}
      </ul>
    </Section>
  );
}

function useColumns(wholeGrams: number): Column<SourceStory['parts'][number]>[] {
  const { seed, sources } = useMessages();
  const { numbers, measures } = useFormat();
  return [
    {
      key: 'part',
      header: seed.part,
      title: true,
      cell: (part) => <TextLink to={paths.source(part.sourceId)}>{part.code}</TextLink>,
    },
    { key: 'share', header: seed.share, figure: true, cell: (part) => numbers.part(part.grams / wholeGrams) },
    { key: 'grams', header: seed.grams, figure: true, cell: (part) => measures.seedWeight(part.grams) },
    { key: 'from', header: seed.from, cell: (part) => part.provenance },
    { key: 'zone', header: seed.seedZone, cell: (part) => part.seedZone ?? seed.unknownZone },
    { key: 'origin', header: sources.origin, cell: (part) => sources.origins[part.origin] },
  ];
}
