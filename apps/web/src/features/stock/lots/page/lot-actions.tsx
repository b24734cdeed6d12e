/** The verbs of a lot: the four that a wet thumb needs most as large buttons, the others under More. */
import { useNavigate } from '@tanstack/react-router';
import { FIELD, GROWERS } from '@rootclock/domain';
import { useSession } from '../../../../lib/api/index.ts';
import { paths } from '../../../../lib/paths.ts';
import { useWantedSheet } from '../../../../lib/wanted-sheet.ts';
import { useMessages } from '../../../../messages/index.ts';
import { Button, Menu, type MenuAction } from '../../../../ui/action/index.ts';
import { HoldSheet } from '../bulk/hold-sheet.tsx';
import { ObserveSheet } from '../bulk/observe-sheet.tsx';
import { TreatSheet } from '../bulk/treat-sheet.tsx';
import { type Lot, targetOf } from '../lot-data.ts';
import { BedSheet } from '../sheets/bed-sheet.tsx';
import { ConvertSheet } from '../sheets/convert-sheet.tsx';
import { CountSheet } from '../sheets/count-sheet.tsx';
import { LeaveSheet } from '../sheets/leave-sheet.tsx';
import { LiftSheet } from '../sheets/lift-sheet.tsx';
import { LoseSheet } from '../sheets/lose-sheet.tsx';
import { MoveSheet } from '../sheets/move-sheet.tsx';
import { PatchSheet } from '../sheets/patch-sheet.tsx';
import { PotUpSheet } from '../sheets/pot-up-sheet.tsx';
import { ReIdentifySheet } from '../sheets/re-identify-sheet.tsx';
import { SplitSheet } from '../sheets/split-sheet.tsx';
import { SpringSheet } from '../winter/spring-sheet.tsx';

const WORKS = [
  'potUp',
  'lift',
  'move',
  'lose',
  'count',
  'spring',
  'rootBall',
  'observe',
  'convert',
  'patch',
  'split',
  'sell',
  'give',
  'plantInBed',
  'treat',
  'hold',
  'reIdentify',
] as const;
type Work = (typeof WORKS)[number];
const isWork = (word: string): word is Work => WORKS.some((work) => work === word);

function OpenSheet({ work, lot, onClose }: { work: Work; lot: Lot; onClose: () => void }) {
  const over = { lot, onClose };
  const about = { target: targetOf(lot), onClose, onDone: onClose };
  switch (work) {
    case 'potUp':
      return <PotUpSheet {...over} />;
    case 'lift':
      return <LiftSheet {...over} />;
    case 'move':
      return <MoveSheet {...over} />;
    case 'lose':
      return <LoseSheet {...over} />;
    case 'count':
      return <CountSheet {...over} />;
    case 'spring':
      return <SpringSheet lotId={lot.id} name={lot.code} onClose={onClose} />;
    case 'rootBall':
      return <ObserveSheet {...about} kind="root-ball" />;
    case 'observe':
      return <ObserveSheet {...about} />;
    case 'convert':
      return <ConvertSheet {...over} />;
    case 'patch':
      return <PatchSheet {...over} />;
    case 'split':
      return <SplitSheet {...over} />;
    case 'sell':
      return <LeaveSheet {...over} kind="sell" />;
    case 'give':
      return <LeaveSheet {...over} kind="give" />;
    case 'plantInBed':
      return <BedSheet {...over} />;
    case 'treat':
      return <TreatSheet {...about} />;
    case 'hold':
      return <HoldSheet {...about} />;
    case 'reIdentify':
      return <ReIdentifySheet {...over} />;
  }
}

/** What can be done with the lot as it stands: nothing is offered that would only be refused. */
function offeredTo(lot: Lot, isGrower: boolean): { main: Work[]; more: Work[] } {
  const inGround = lot.container.kind === 'ground';
  const isHeld = lot.holds.some((hold) => hold.releasedOn === null);
  if (lot.units.onHand === 0) return { main: ['count'], more: isGrower ? ['reIdentify'] : [] };
  const hasCells = lot.container.kind === 'tray' || lot.container.kind === 'flat';
  const potted: Work[] = inGround
    ? []
    : ['rootBall', 'convert', ...(hasCells ? (['patch'] as const) : []), 'plantInBed'];
  return {
    main: [inGround ? 'lift' : 'potUp', 'move', 'lose', 'count'],
    more: [
      ...potted,
      'spring',
      'observe',
      'split',
      ...(isHeld ? [] : (['sell', 'give'] as const)),
      'treat',
      ...(isGrower ? (['hold', 'reIdentify'] as const) : []),
    ],
  };
}

export function LotActions({ lot }: { lot: Lot }) {
  const { actions } = useMessages().lots;
  const { mayBe } = useSession();
  const [wanted, setWork] = useWantedSheet(isWork);
  const navigate = useNavigate();
  if (!mayBe(FIELD)) return null;
  const { main, more } = offeredTo(lot, mayBe(GROWERS));
  const whatIf: MenuAction[] =
    lot.units.onHand === 0
      ? []
      : [
          {
            id: 'whatIf',
            label: actions.whatIf,
            onAction: () => void navigate({ to: paths.whatIf(), search: { kind: 'lose-lot', lot: lot.id } }),
          },
        ];
  const work = wanted !== null && [...main, ...more].includes(wanted) ? wanted : null;
  return (
    <div className="lot-actions">
      {main.map((each, index) => (
        <Button key={each} look={index === 0 ? 'primary' : 'plain'} onClick={() => setWork(each)}>
          {actions[each]}
        </Button>
      ))}
      {more.length > 0 && (
        <Menu
          label={actions.more}
          actions={[
            ...more.map((each): MenuAction => ({ id: each, label: actions[each], onAction: () => setWork(each) })),
            ...whatIf,
          ]}
        />
      )}
      {work && <OpenSheet work={work} lot={lot} onClose={() => setWork(null)} />}
    </div>
  );
}
