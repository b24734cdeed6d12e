/** The clock of a lot: by when it must be in the ground, the rule that binds in a sentence, and the planting windows behind it. */
import { GROWERS, type Standing } from '@rootclock/domain';
import { useSession } from '../../../../lib/api/index.ts';
import { useFormat } from '../../../../lib/format/index.ts';
import { paths } from '../../../../lib/paths.ts';
import { useMessages } from '../../../../messages/index.ts';
import { ButtonLink } from '../../../../ui/action/index.ts';
import { Callout } from '../../../../ui/feedback/index.ts';
import { DefinitionList, Section } from '../../../../ui/layout/index.ts';
import { StandingMark } from '../../../../ui/sign/index.ts';
import type { Lot } from '../lot-data.ts';
import { useRuleSentence } from './rule-sentence.ts';

export function ClockPanel({ lot }: { lot: Lot }) {
  const { page, words } = useMessages().lots;
  const { dates } = useFormat();
  const { mayBe } = useSession();
  const sentence = useRuleSentence()(lot);
  const assumed = (on: string | null, standing: string) =>
    on && (standing === 'assumed' ? `${dates.long(on)} ${page.assumed}` : dates.long(on));
  const readiness = lot.rootCheckedOn
    ? page.ready(dates.short(lot.rootCheckedOn))
    : lot.readyOn
      ? page.expected(dates.short(lot.readyOn))
      : page.notReady;
  const mayHaveOwnRule = mayBe(GROWERS) && lot.closedOn === null && lot.container.kind !== 'ground' && !lot.rule?.lotId;
  return (
    <Section title={page.clock}>
      {lot.plantByState === 'no-window' && <Callout tone="caution">{page.noWindow}</Callout>}
      {lot.plantByState === 'winter-carry' && lot.limitOn && (
        <Callout tone="note">{page.carry(dates.long(lot.limitOn))}</Callout>
      )}
      {lot.dormant ? (
        <Callout tone="note">{page.dormant}</Callout>
      ) : lot.mayBeDormant && lot.plant.lastEmergenceMd ? (
        <Callout tone="note">{page.lateRiser(dates.yearly(lot.plant.lastEmergenceMd))}</Callout>
      ) : null}
      {sentence && lot.rule && (
        <p className="lot-rule">
          {sentence} <StandingMark standing={lot.rule.standing as Standing} source={lot.rule.source} />
        </p>
      )}
      <DefinitionList
        facts={[
          {
            term: page.state,
            value: lot.plantByOn && `${dates.long(lot.plantByOn)}, ${words.states[lot.plantByState]}`,
          },
          { term: page.limit, value: lot.limitOn && dates.long(lot.limitOn) },
          {
            term: page.windows,
            value: lot.windows
              .map((window) => page.windowRange(dates.yearly(window.opensMd), dates.yearly(window.closesMd)))
              .join('; '),
          },
          { term: page.nextWindow, value: lot.nextOpensOn && dates.long(lot.nextOpensOn) },
          { term: page.confined, value: assumed(lot.confinedOn, lot.confinedStanding) },
          { term: page.container, value: assumed(lot.containerOn, lot.containerStanding) },
        ]}
      />
      <p>{readiness}</p>
      {mayHaveOwnRule && (
        <ButtonLink to={paths.rules()} search={{ lot: lot.id }}>
          {page.ownRule}
        </ButtonLink>
      )}
    </Section>
  );
}
