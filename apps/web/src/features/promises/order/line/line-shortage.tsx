/** Why a line is short, in numbers, with the ways out. */
import { useState } from 'react';
import { useMessages } from '../../../../messages/index.ts';
import { Button } from '../../../../ui/action/index.ts';
import { Callout } from '../../../../ui/feedback/index.ts';
import type { LineCardProps } from './line-props.ts';
import { OffersSheet } from './offers-sheet.tsx';
import { ShortageReasons } from '../../marks/shortage-reasons.tsx';

export function LineShortage({ line, mayChange }: LineCardProps) {
  const { promises } = useMessages();
  const words = promises.line;
  const [choosing, setChoosing] = useState(false);
  return (
    <Callout
      tone="caution"
      title={words.isShort(line.shortUnits)}
      actions={mayChange && <Button onClick={() => setChoosing(true)}>{words.choose}</Button>}
    >
      <ShortageReasons reasons={line.reasons} />
      {choosing && <OffersSheet line={line} onClose={() => setChoosing(false)} />}
    </Callout>
  );
}
