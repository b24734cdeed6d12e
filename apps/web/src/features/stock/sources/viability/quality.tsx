/** Quality: what the seed is worth and what will come up of it, two figures that are never mixed, each with what it rests on. */
import { pureLiveSeed } from '@rootclock/domain';
import type { ReactNode } from 'react';
import { useFormat } from '../../../../lib/format/index.ts';
import { useMessages } from '../../../../messages/index.ts';
import type { SourceStory } from '../source-story.ts';
import './viability.css';

type Seed = NonNullable<SourceStory['seed']>;

/** Pure live seed as a share, or null while something of it is not known. */
export function pureLiveShare({
  purity,
  germination,
  hard,
  dormant,
}: Pick<Seed, 'purity' | 'germination' | 'hard' | 'dormant'>): number | null {
  return purity === null || germination === null
    ? null
    : pureLiveSeed({ purity, germination, hard: hard ?? 0, dormant: dormant ?? 0 });
}

export function Quality({ seed }: { seed: Seed }) {
  const { seed: say } = useMessages();
  const { numbers } = useFormat();
  if (seed.germination === null || seed.testedOn === null || seed.testMethod === null) return null;
  const test = seed.tests.find(
    ({ withdrawn, testedOn, meanShare }) => !withdrawn && testedOn === seed.testedOn && meanShare === seed.germination,
  );
  const emerges = seed.testMethod === 'germination';
  const worth = pureLiveShare(seed);
  return (
    <div className="stack">
      <dl className="quality-figures">
        <Figure
          term={say.emergence}
          figure={emerges ? numbers.share(seed.germination) : '–'}
          words={emerges ? say.emergenceText : say.emergenceUnknown}
        />
        <Figure
          term={say.pureLive}
          figure={worth === null ? '–' : numbers.share(worth)}
          words={worth === null ? say.pureLiveUnknown : say.pureLiveText}
        />
      </dl>
      <p className="quality-words">
        {say.restsOn(
          test ? test.replicates.length * test.seedsPerReplicate : 0,
          seed.testedOn,
          say.methods[seed.testMethod],
        )}
        .{seed.testToRepeat && ` ${say.restsOnDoubtful}`}
      </p>
    </div>
  );
}

function Figure({ term, figure, words }: { term: string; figure: ReactNode; words: string }) {
  return (
    <div>
      <dt>{term}</dt>
      <dd className="quality-figure">{figure}</dd>
      <dd className="quality-words">{words}</dd>
    </div>
  );
}
