/** DayOutlook: line by line, in numbers, what another day would do. */
import type { promises } from '@rootclock/contracts';
import { useMessages } from '../../../../messages/index.ts';

export function DayOutlook({ outlook }: { outlook: promises.DayOutlook }) {
  const { gardens } = useMessages();
  const words = gardens.day;
  const own = outlook.lines.filter(({ orderId }) => orderId === outlook.orderId);
  const others = outlook.lines.filter(({ orderId, filledNow, filledThen }) => orderId !== outlook.orderId && filledNow !== filledThen);
  const sentence = (line: promises.LineChange): string => {
    if (line.filledThen < line.filledNow) return words.shorter(line.scientificName, line.containerCode, line.filledNow, line.filledThen, line.filledNow - line.filledThen, line.units);
    if (line.filledThen > line.filledNow) return words.fuller(line.scientificName, line.containerCode, line.filledNow, line.filledThen, line.units);
    return words.same(line.scientificName, line.containerCode, line.filledNow, line.units);
  };
  const changed = own.filter(({ filledNow, filledThen }) => filledNow !== filledThen);
  return (
    <div className="stack">
      <p>
        <strong>{words.whatIf(outlook.newDueOn)}</strong> {changed.length === 0 && others.length === 0 ? words.nothingChanges : ''}
      </p>
      {own.length > 0 && (
        <ul className="plain-list">
          {own.map((line) => (
            <li key={line.lineId} className={line.shorterBy > 0 ? 'outlook-shorter' : undefined}>
              {sentence(line)}
            </li>
          ))}
        </ul>
      )}
      {others.length > 0 && (
        <>
          <p>{words.others}</p>
          <ul className="plain-list">
            {others.map((line) => (
              <li key={line.lineId} className={line.shorterBy > 0 ? 'outlook-shorter' : undefined}>
                {words.otherLine(line.orderCode, line.clientName, sentence(line))}
              </li>
            ))}
          </ul>
        </>
      )}
      <p>{outlook.keepsRank ? words.keeps : words.goesLast}</p>
    </div>
  );
}
