/** Sets the second step up: the password, then the key for the app and a first code, then the recovery codes, shown this once. */
import { people as contracts } from '@rootclock/contracts';
import { useMemo, useState } from 'react';
import { renderSVG } from 'uqr';
import { Submit, useCommandForm } from '../../../lib/form/index.ts';
import { useDirectCommand } from '../../../lib/outbox/index.ts';
import { useMessages } from '../../../messages/index.ts';
import { Button } from '../../../ui/action/index.ts';
import { toast } from '../../../ui/feedback/index.ts';
import { TextField } from '../../../ui/fields/index.ts';
import { Form } from '../../../ui/form/index.ts';
import { Sheet } from '../../../ui/overlay/index.ts';
import './second-step.css';

interface Key {
  secret: string;
  address: string;
}

export function BeginSecondStepSheet({ onClose }: { onClose: () => void }) {
  const { second: say } = useMessages().door;
  const [key, setKey] = useState<Key | null>(null);
  const [codes, setCodes] = useState<string[] | null>(null);
  return (
    <Sheet open onClose={onClose} title={codes ? say.codesTitle : say.setUpTitle}>
      {codes ? (
        <Codes codes={codes} onDone={onClose} />
      ) : key ? (
        <FirstCode shown={key} onSaved={setCodes} />
      ) : (
        <Password onSaved={setKey} />
      )}
    </Sheet>
  );
}

function Password({ onSaved }: { onSaved: (key: Key) => void }) {
  const { second: say } = useMessages().door;
  const form = useCommandForm({
    command: useDirectCommand('people.beginSecondStep'),
    contract: contracts.beginSecondStep,
    initial: { password: '' },
    body: (values) => values,
    onSaved,
  });
  return (
    <Form {...form.props}>
      <TextField label={say.password} type="password" autoComplete="current-password" {...form.field('password')} />
      <Submit form={form}>{say.next}</Submit>
    </Form>
  );
}

/** Dark on light whatever the theme is: that is what cameras look for. */
const pictureOf = (address: string) => `data:image/svg+xml,${encodeURIComponent(renderSVG(address, { border: 2 }))}`;
const inGroups = (secret: string) => secret.replaceAll(/(.{4})(?=.)/g, '$1 ');

function FirstCode({ shown, onSaved }: { shown: Key; onSaved: (codes: string[]) => void }) {
  const { second: say } = useMessages().door;
  const picture = useMemo(() => pictureOf(shown.address), [shown.address]);
  const form = useCommandForm({
    command: useDirectCommand('people.finishSecondStep'),
    contract: contracts.finishSecondStep,
    initial: { code: '' },
    body: (values) => values,
    onSaved: ({ recoveryCodes }) => onSaved(recoveryCodes),
  });
  return (
    <Form {...form.props}>
      <p>{say.scan}</p>
      <img className="key-picture" src={picture} alt={say.picture} />
      <p>
        {say.key}: <code className="key-text">{inGroups(shown.secret)}</code>
      </p>
      <TextField label={say.code} inputMode="numeric" autoComplete="one-time-code" {...form.field('code')} />
      <Submit form={form}>{say.turnOn}</Submit>
    </Form>
  );
}

function Codes({ codes, onDone }: { codes: string[]; onDone: () => void }) {
  const { second: say } = useMessages().door;
  const copy = () => {
    // Only safe origins have a clipboard; a nursery's own server on the local net may be none.
    const copied = navigator.clipboard
      ? navigator.clipboard.writeText(codes.join('\n'))
      : Promise.reject(new Error('no clipboard'));
    copied.then(
      () => toast({ text: say.copied }),
      () => toast({ tone: 'problem', text: say.copyFailed }),
    );
  };
  return (
    <div className="stack">
      <p>{say.codesLead}</p>
      <ul className="recovery-codes">
        {codes.map((code) => (
          <li key={code}>
            <code>{code}</code>
          </li>
        ))}
      </ul>
      <div className="row">
        <Button look="primary" onClick={onDone}>
          {say.done}
        </Button>
        <Button onClick={copy}>{say.copy}</Button>
      </div>
    </div>
  );
}
