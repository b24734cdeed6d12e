/** ShareBar: a share from none to all. Filled is what is believed, the line with ends what the counts alone allow, the stroke the protocol's figure. */
import { useFormat } from '../../../lib/format/index.ts';
import { useMessages } from '../../../messages/index.ts';
import type { ShownStage } from './learned.ts';
import './record.css';

const WIDTH = 200;
const HEIGHT = 22;
const EDGE = 2;
const MIDDLE = HEIGHT / 2;
const CAP = 5;

const xOf = (share: number): number => EDGE + share * (WIDTH - 2 * EDGE);

export function ShareBar({ stage }: { stage: Pick<ShownStage, 'share' | 'low' | 'high' | 'tried' | 'prior'> }) {
  const { record: say } = useMessages();
  const { numbers } = useFormat();
  const { share, low, high, tried, prior } = stage;
  const [shown, from, to] = [share, low, high].map(numbers.share) as [string, string, string];
  const label =
    tried === 0
      ? say.barAlone(numbers.share(prior?.share ?? share))
      : prior
        ? say.bar(shown, from, to, numbers.share(prior.share))
        : say.barCounts(shown, from, to);
  return (
    <svg className="share-bar" viewBox={`0 0 ${WIDTH} ${HEIGHT}`} role="img" aria-label={label}>
      <rect className="share-whole" x={EDGE} y={MIDDLE - 5} width={WIDTH - 2 * EDGE} height="10" />
      <rect
        className={tried === 0 ? 'share-untried' : 'share-believed'}
        x={EDGE}
        y={MIDDLE - 5}
        width={Math.max(0, xOf(share) - EDGE)}
        height="10"
      />
      {tried > 0 && (
        <path
          className="share-interval"
          d={`M${xOf(low)} ${MIDDLE}H${xOf(high)}M${xOf(low)} ${MIDDLE - CAP}v${2 * CAP}M${xOf(high)} ${MIDDLE - CAP}v${2 * CAP}`}
        />
      )}
      {prior && <path className="share-prior" d={`M${xOf(prior.share)} 1V${HEIGHT - 1}`} />}
    </svg>
  );
}
