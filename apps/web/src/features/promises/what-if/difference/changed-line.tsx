/** ChangedLine: one line as it would fare, with the plants it would give up and get by code, and why. */
import type { promises } from '@rootclock/contracts';
import { paths } from '../../../../lib/paths.ts';
import { useMessages } from '../../../../messages/index.ts';
import { TextLink } from '../../../../ui/action/index.ts';
import { Badge, type BadgeShape } from '../../../../ui/feedback/index.ts';
import { Taxon } from '../../../plants/taxon.tsx';
import { ShortageReasons } from '../../marks/shortage-reasons.tsx';

export interface ChangedLineProps {
  line: promises.WhatIfLine;
  /** Inside a form no way leads out of it, so that nothing typed is lost. */
  inForm?: boolean;
}

export function ChangedLine({ line, inForm = false }: ChangedLineProps) {
  const words = useMessages().promises.whatIf;
  const { shape, word } = useMark(line);
  const title = words.lineOf(line.orderCode === '' ? words.newOrder : line.orderCode, line.clientName);
  return (
    <article className="panel what-if-line">
      <h3>{inForm || line.orderId === '' ? title : <TextLink to={paths.order(line.orderId)}>{title}</TextLink>}</h3>
      <p>
        <Taxon name={line.scientificName} />, {line.containerCode}
      </p>
      <p className="row">
        <Badge shape={shape}>{word}</Badge>
      </p>
      <p>
        {words.onDay(line.dueOn)}{' '}
        {line.standing === 'stays' && words.filled(line.filledNow, line.filledThen, line.units)}
      </p>
      {line.givesUp.length + line.takes.length > 0 && (
        <ul className="plain-list">
          {line.givesUp.map(({ supplyId, code, units, why, orders }) => (
            <li key={supplyId}>{words.givesUp(units, code, words.why[why](orders))}</li>
          ))}
          {line.takes.map(({ supplyId, code, units, orders }) => (
            <li key={supplyId}>{words.takes(units, code, orders)}</li>
          ))}
        </ul>
      )}
      {line.shortThen > 0 && (
        <>
          <p>{words.stillShort(line.shortThen)}</p>
          <ShortageReasons reasons={line.reasons} />
        </>
      )}
    </article>
  );
}

/** How the line would fare, in a word and a shape. */
function useMark({ standing, filledNow, filledThen, units, givesUp }: promises.WhatIfLine): {
  shape: BadgeShape;
  word: string;
} {
  const words = useMessages().promises.whatIf;
  if (standing === 'gone') return { shape: 'open', word: words.gone };
  if (standing === 'added')
    return {
      shape: filledThen === units ? 'full' : filledThen === 0 ? 'over' : 'half',
      word: words.gets(filledThen, units),
    };
  if (filledThen < filledNow) return { shape: 'over', word: words.loses(filledNow - filledThen) };
  if (filledThen > filledNow) return { shape: 'full', word: words.gains(filledThen - filledNow) };
  return givesUp.length > 0 ? { shape: 'tied', word: words.moves } : { shape: 'open', word: words.same };
}
