/** Seed in store: what is left of what came in, how old it is and how it is kept, and every gram in and out. */
import { daysBetween, FIELD } from '@rootclock/domain';
import { useState } from 'react';
import { useSession } from '../../../../lib/api/index.ts';
import { useFormat } from '../../../../lib/format/index.ts';
import { useMessages } from '../../../../messages/index.ts';
import { Button } from '../../../../ui/action/index.ts';
import { Callout } from '../../../../ui/feedback/index.ts';
import { DefinitionList, Section } from '../../../../ui/layout/index.ts';
import { BlendSheet } from '../blend/blend-sheet.tsx';
import type { SourceStory } from '../source-story.ts';
import { Movements } from './movements.tsx';
import { PutInSheet } from './put-in-sheet.tsx';
import { TakeOutSheet } from './take-out-sheet.tsx';
import { WeighSheet } from './weigh-sheet.tsx';
import './store.css';

type Seed = NonNullable<SourceStory['seed']>;
const SHEETS = { putIn: PutInSheet, takeOut: TakeOutSheet, weigh: WeighSheet, blend: BlendSheet };

export function StoreSection({ source, seed }: { source: SourceStory; seed: Seed }) {
  const { seed: say } = useMessages();
  const { mayBe } = useSession();
  const [open, setOpen] = useState<keyof typeof SHEETS | null>(null);
  const OpenSheet = open && SHEETS[open];
  const mayBook = mayBe(FIELD);
  const hasSeed = (seed.gramsLeft ?? 0) > 0;
  return (
    <Section
      title={say.store}
      actions={
        mayBook && (
          <>
            {!source.retired && <Button onClick={() => setOpen('putIn')}>{say.putIn}</Button>}
            {hasSeed && <Button onClick={() => setOpen('takeOut')}>{say.takeOut}</Button>}
            <Button onClick={() => setOpen('weigh')}>{say.weigh}</Button>
            {hasSeed && !source.retired && <Button onClick={() => setOpen('blend')}>{say.blend}</Button>}
          </>
        )
      }
    >
      <div className="stack">
        {hasSeed &&
          seed.cautions.map((caution) => (
            <Callout key={caution} tone="caution">
              {say.cautions[caution]}
            </Callout>
          ))}
        <Left seed={seed} />
        <Keeping source={source} seed={seed} />
        {seed.movements.length > 0 && (
          <Section title={say.booked} level={3}>
            <Movements movements={seed.movements} mayBook={mayBook} />
          </Section>
        )}
      </div>
      {OpenSheet && <OpenSheet source={source} onClose={() => setOpen(null)} />}
    </Section>
  );
}

function Left({ seed: { gramsLeft, gramsIn } }: { seed: Seed }) {
  const { seed: say } = useMessages();
  const { measures } = useFormat();
  if (gramsLeft === null) {
    return (
      <p>
        <strong>{say.neverWeighed}</strong> {say.neverWeighedText}
      </p>
    );
  }
  return (
    <div>
      <p className="seed-left">
        {gramsLeft === 0
          ? say.emptyStore
          : gramsIn > gramsLeft
            ? say.ofIn(measures.seedWeight(gramsLeft), measures.seedWeight(gramsIn))
            : say.left(measures.seedWeight(gramsLeft))}
      </p>
      {/* The sentence above has both figures. */}
      <div className="seed-bar" aria-hidden="true">
        <span style={{ inlineSize: `${gramsIn > 0 ? Math.min(100, (gramsLeft / gramsIn) * 100) : 0}%` }} />
      </div>
    </div>
  );
}

function Keeping({ source, seed }: { source: SourceStory; seed: Seed }) {
  const { seed: say, ui } = useMessages();
  const { dates, numbers, measures } = useFormat();
  const { today } = useSession();
  const aged = (since: string) => say.ageOf(Math.max(0, daysBetween(since, today)));
  const age = source.gatheredOn
    ? say.ageFrom(
        aged(source.gatheredOn),
        dates.rough(source.gatheredOn, source.gatheredPrecision ?? 'day', (season) => ui[season]),
      )
    : source.storedOn && say.ageStored(aged(source.storedOn), dates.long(source.storedOn));
  const { rawGrams: raw, cleanedGrams: cleaned } = source;
  return (
    <DefinitionList
      facts={[
        { term: say.age, value: age },
        { term: say.keeping, value: source.storage && say.storages[source.storage] },
        { term: say.storedOn, value: source.gatheredOn && source.storedOn && dates.long(source.storedOn) },
        {
          term: say.marks,
          value: [seed.sowFresh && say.sowFreshMark, seed.neverDry && say.neverDryMark].filter(Boolean).join(', '),
        },
        { term: say.raw, value: raw === null ? null : measures.seedWeight(raw) },
        {
          term: source.kind === 'bought-seed' ? say.bought : say.cleaned,
          value:
            cleaned === null
              ? null
              : [measures.seedWeight(cleaned), raw === null ? '' : say.cleaningShare(numbers.share(cleaned / raw))]
                  .filter(Boolean)
                  .join(', '),
        },
        { term: say.purity, value: seed.purity === null ? null : numbers.part(seed.purity) },
        { term: say.seedsPerGram, value: seed.seedsPerGram === null ? null : numbers.count(seed.seedsPerGram) },
      ]}
    />
  );
}
