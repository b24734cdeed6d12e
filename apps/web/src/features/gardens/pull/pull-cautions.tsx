/** What a crew must know: each plant's handling rules and cautions, and the cautions of the work, deferring to labels, local codes and licensed practice. */
import type { gardens as contracts } from '@rootclock/contracts';
import { STANDINGS, type Standing } from '@rootclock/domain';
import { useMessages } from '../../../messages/index.ts';
import { Callout } from '../../../ui/feedback/index.ts';
import { Panel, Section } from '../../../ui/layout/index.ts';
import { StandingMark } from '../../../ui/sign/index.ts';
import { LineFlags } from '../../promises/marks/line-flags.tsx';
import { Taxon } from '../../plants/taxon.tsx';

type Caution = contracts.PullPlant['cautions'][number];

const standingOf = (standing: string): Standing | undefined => STANDINGS.find((each) => each === standing);

function Cautions({ cautions }: { cautions: readonly Caution[] }) {
  return (
    <ul className="plain-list">
      {cautions.map(({ text, standing, source }) => {
        const known = standingOf(standing);
        return (
          <li key={text}>
            {text} {known && <StandingMark standing={known} source={source} />}
          </li>
        );
      })}
    </ul>
  );
}

/** Rules of handling stand beside each row; here they stand for plants that are no row any more. */
export function PlantCare({ list }: { list: contracts.PullList }) {
  const { gardens, plants: plantWords } = useMessages();
  const told = list.plants
    .map((plant) => {
      const row = list.rows.find(({ plantId }) => plantId === plant.plantId);
      return { ...plant, row, handling: row ? [] : plant.handling };
    })
    .filter(
      ({ handling, cautions, row }) => handling.length > 0 || cautions.length > 0 || (row?.flags.length ?? 0) > 0,
    );
  if (told.length === 0) return null;
  return (
    <Section title={gardens.pull.careTitle}>
      <div className="pull-care">
        {told.map(({ plantId, scientificName, vernacularName, handling, cautions, row }) => (
          <Panel key={plantId}>
            <div className="stack">
              <div>
                <h3>
                  <Taxon name={scientificName} />
                </h3>
                {vernacularName && <p>{vernacularName}</p>}
              </div>
              {row && <LineFlags line={row} region={null} />}
              {handling.length > 0 && (
                <ul className="plain-list">
                  {handling.map((rule) => (
                    <li key={rule}>{plantWords.handling[rule]}</li>
                  ))}
                </ul>
              )}
              {cautions.length > 0 && (
                <Callout tone="caution">
                  <Cautions cautions={cautions} />
                </Callout>
              )}
            </div>
          </Panel>
        ))}
      </div>
    </Section>
  );
}

export function WorkCautions({ list }: { list: contracts.PullList }) {
  const { gardens } = useMessages();
  const words = gardens.pull;
  const isPoisonous = list.plants.some(({ cautions }) => cautions.length > 0);
  return (
    <Section title={words.workTitle}>
      <Callout tone="caution">
        <div className="stack">
          {list.kind === 'installation' && <p>{words.digging}</p>}
          <Cautions cautions={list.workCautions} />
          {isPoisonous && <p>{words.poisonous}</p>}
          <p>{words.deferring}</p>
        </div>
      </Callout>
    </Section>
  );
}
