/** How it is begun, what the phases take, and what gets ready: what a grower wants to know before the stages. */
import type { propagation as contracts } from '@rootclock/contracts';
import { GROWTH_PHASES, phaseDays, shareReady } from '@rootclock/domain';
import { useFormat } from '../../../../lib/format/index.ts';
import { useMessages } from '../../../../messages/index.ts';
import { DefinitionList, Section } from '../../../../ui/layout/index.ts';

export function MethodSection({ protocol }: { protocol: contracts.ProtocolPage }) {
  const { propagation } = useMessages();
  const { protocols: say } = propagation;
  const { numbers } = useFormat();
  const { version, plant, method } = protocol;
  const plan = { stages: version.stages, dormantMonths: plant.dormantMonths };
  const phases = phaseDays(plan);
  const ofHundred = (share: number) => numbers.count(Math.round(share * 100));
  const ready = ofHundred(shareReady(plan));
  const seeds = version.seedsPerCell;
  return (
    <Section title={say.page.method}>
      <DefinitionList
        facts={[
          {
            term: say.page.start,
            value: say.page.units(propagation.unitNames[version.startUnit], version.startContainer?.name ?? null),
          },
          { term: say.page.seedsPerCell, value: seeds === null ? null : numbers.count(seeds) },
          { term: say.page.target, value: version.targetContainer?.name },
          { term: say.page.totalTerm, value: say.range(phases.total) },
          ...GROWTH_PHASES.map((phase) => ({
            term: say.page.phases[phase],
            value: phases[phase].long === 0 ? null : say.range(phases[phase]),
          })),
          {
            term: say.page.yield,
            value: (
              <>
                <p>{method === 'seed' ? say.page.readySeeds(ready) : say.page.readyPieces(ready)}</p>
                {seeds !== null && seeds > 1 && <p>{say.page.readyCells(seeds, ofHundred(shareReady(plan, seeds)))}</p>}
                <p className="protocol-soft">{say.page.yieldHint}</p>
              </>
            ),
          },
        ]}
      />
    </Section>
  );
}
