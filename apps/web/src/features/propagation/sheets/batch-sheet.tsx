/** BatchSheet: the entry that is being made on a batch, risen over its page. */
import { useMessages } from '../../../messages/index.ts';
import { Sheet } from '../../../ui/overlay/index.ts';
import type { SheetProps } from '../sheet-props.ts';
import { BeginStageSheet } from './begin-stage-sheet.tsx';
import { CloseSheet } from './close-sheet.tsx';
import { CorrectSheet } from './correct-sheet.tsx';
import { CountSheet } from './count-sheet.tsx';
import { ForecastSheet } from './forecast-sheet.tsx';
import { LoseSheet } from './lose-sheet.tsx';
import { MoveSheet } from './move-sheet.tsx';
import { PotSheet } from '../potting/pot-sheet.tsx';
import { SecondWinterSheet } from './second-winter-sheet.tsx';
import { ThinSheet } from './thin-sheet.tsx';

const SHEETS = {
  count: CountSheet,
  pot: PotSheet,
  lose: LoseSheet,
  thin: ThinSheet,
  move: MoveSheet,
  forecast: ForecastSheet,
  correct: CorrectSheet,
  close: CloseSheet,
  winter: SecondWinterSheet,
  stage: BeginStageSheet,
};
export type SheetName = keyof typeof SHEETS;
export const isSheet = (word: string): word is SheetName => word in SHEETS;

export function BatchSheet({ name, ...props }: SheetProps & { name: SheetName | null }) {
  const { sheet: say, stages } = useMessages().propagation;
  const titles: Record<SheetName, string> = {
    count: say.countTitle,
    pot: say.potTitle,
    lose: say.loseTitle,
    thin: say.thinTitle,
    move: say.moveTitle,
    forecast: say.forecastTitle,
    correct: say.correctTitle,
    close: say.closeTitle,
    winter: say.winterTitle,
    stage: stages.beginTitle,
  };
  const Entry = name && SHEETS[name];
  return (
    <Sheet open={name !== null} onClose={props.onClose} title={name ? `${titles[name]}: ${props.batch.code}` : ''}>
      {Entry && <Entry {...props} />}
    </Sheet>
  );
}
