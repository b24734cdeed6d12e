/** A plant's other names. Beside a name that several plants bear it says which, so that nobody orders the wrong one by it. */
import type { plants as contracts } from '@rootclock/contracts';
import { GROWERS } from '@rootclock/domain';
import { useState } from 'react';
import { useSession } from '../../lib/api/index.ts';
import { newId } from '../../lib/ids.ts';
import { useCommand } from '../../lib/outbox/index.ts';
import { paths } from '../../lib/paths.ts';
import { tellRefused } from '../../lib/tell-refused.ts';
import { useMessages } from '../../messages/index.ts';
import { Button, TextLink } from '../../ui/action/index.ts';
import { toast } from '../../ui/feedback/index.ts';
import { Section } from '../../ui/layout/index.ts';
import { StandingMark } from '../../ui/sign/index.ts';
import { PlantName } from './plant-name.tsx';
import { AddNameSheet } from './add-name-sheet.tsx';

export function PlantNames({ plant }: { plant: contracts.PlantPage }) {
  const { page: say } = useMessages().plants;
  const { mayBe } = useSession();
  const [adding, setAdding] = useState(false);
  const mayChange = mayBe(GROWERS);
  return (
    <Section title={say.names} actions={mayChange && <Button onClick={() => setAdding(true)}>{say.addName}</Button>}>
      <ul className="plant-names">
        {plant.names.map((name) => (
          <NameLine key={name.id} plant={plant} name={name} mayChange={mayChange} />
        ))}
      </ul>
      {adding && <AddNameSheet plant={plant} onClose={() => setAdding(false)} />}
    </Section>
  );
}

function NameLine({
  plant,
  name,
  mayChange,
}: {
  plant: contracts.PlantPage;
  name: contracts.PlantNameRow;
  mayChange: boolean;
}) {
  const { page: say } = useMessages().plants;
  const remove = useCommand('plants.removePlantName', { title: say.removeName(name.name) });
  const add = useCommand('plants.addPlantName', { title: `${say.addName}: ${name.name}` });
  const putBack = () => void add.send({ nameId: newId(), plantId: plant.id, kind: name.kind, name: name.name });
  const takeOff = () =>
    void remove
      .send({ nameId: name.id })
      .then(() => toast({ text: say.nameRemoved(name.name), undo: putBack }), tellRefused);
  return (
    <li className="plant-name-line">
      <span className="plant-name-words">
        {name.kind === 'synonym' ? <PlantName name={name.name} /> : name.name}{' '}
        <span className="plant-name-kind">
          {name.kind === 'synonym' ? say.synonym : say.common}, <StandingMark standing={name.standing} />
        </span>
        {name.alsoMeans.length > 0 && (
          <span className="fact-note">
            {say.alsoMeans}{' '}
            {name.alsoMeans.map((other, index) => (
              <span key={other.plantId}>
                {index > 0 && ', '}
                <TextLink to={paths.plant(other.plantId)}>
                  <PlantName name={other.scientificName} />
                </TextLink>
              </span>
            ))}
          </span>
        )}
      </span>
      {mayChange && (
        <Button look="quiet" aria-label={say.removeName(name.name)} busy={remove.state === 'sending'} onClick={takeOff}>
          {say.remove}
        </Button>
      )}
    </li>
  );
}
