/** What the protocol says in words, under the fields of the printed page. */
import { propagation as contracts } from '@rootclock/contracts';
import { useMessages } from '../../../../messages/index.ts';
import { DefinitionList, Section } from '../../../../ui/layout/index.ts';

export function WordsSection({ version }: { version: contracts.ProtocolVersionPage }) {
  const { protocols: say } = useMessages().propagation;
  const said = contracts.PROTOCOL_TEXTS.filter((field) => version.texts[field] !== '');
  return (
    <Section title={say.page.words}>
      {said.length === 0 ? (
        <p>{say.page.noWords}</p>
      ) : (
        <DefinitionList
          facts={said.map((field) => ({
            term: say.texts[field],
            value: <span className="protocol-words">{version.texts[field]}</span>,
          }))}
        />
      )}
    </Section>
  );
}
