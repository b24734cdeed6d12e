import type { propagation } from '@rootclock/contracts';
import { type GrowthPhase, mayWait, type PaceDays, phaseDays, shareReady } from '@rootclock/domain';
import type { Block, Run } from '../blocks.ts';
import { drawBlock } from '../blocks.ts';
import { cutText, fit } from '../fit.ts';
import { MARGIN, onePage } from '../one-page.ts';
import { stageBlocks } from './stage-rows.ts';
import { measuresOf } from './measures.ts';
import { type PaperLanguage, type ProtocolWords, protocolWords } from './words.ts';

export interface ProtocolPaper {
  protocol: propagation.ProtocolPage;
  nurseryName: string;
  /** Letter paper and Fahrenheit, or A4 and Celsius. */
  units: 'metric' | 'us';
  language: PaperLanguage;
  madeAt: Date;
}

const plain = (text: string): Run => ({ text, face: 'plain' });
const bold = (text: string): Run => ({ text, face: 'bold' });
const whole = (runs: Run[], scale: number, space: number, ruled = false): Block => ({
  cells: [{ runs, weight: 1 }],
  scale,
  space,
  ruled,
});
const labelled = (label: string, text: string, space = 0.35): Block => ({
  cells: [
    { runs: [bold(label)], weight: 2 },
    { runs: [plain(text)], weight: 7 },
  ],
  scale: 1,
  space,
  ruled: false,
});

function headOf({ protocol, nurseryName, language }: ProtocolPaper, words: ProtocolWords): Block[] {
  const { plant, method, label, version } = protocol;
  const day = new Intl.DateTimeFormat(language, { dateStyle: 'long', timeZone: 'UTC' }).format(
    new Date(`${version.madeOn}T00:00:00Z`),
  );
  const said = [
    words.methods[method],
    label,
    words.version(version.number, day),
    version.personName ? words.by(version.personName) : '',
  ]
    .filter(Boolean)
    .join(', ');
  return [
    whole(
      [{ text: plant.scientificName, face: 'italic' }, plain(plant.vernacularName ? `  ${plant.vernacularName}` : '')],
      1.9,
      0,
    ),
    whole(
      [bold(`${words.title} `), plain(`${said}. ${nurseryName}.${protocol.isRetired ? ` ${words.retired}.` : ''}`)],
      1.05,
      0.2,
    ),
  ];
}

function factsOf({ protocol: { version, plant, method } }: ProtocolPaper, words: ProtocolWords): Block[] {
  const plan = { stages: version.stages, dormantMonths: plant.dormantMonths };
  const phases = phaseDays(plan);
  const percent = (share: number) => String(Math.round(share * 100));
  const start = [
    words.units[version.startUnit],
    version.startContainer?.name,
    version.seedsPerCell ? words.seedsPerCell(version.seedsPerCell) : '',
  ]
    .filter(Boolean)
    .join(', ');
  const ready = [words.ready(method === 'seed' ? 'seed' : 'piece', percent(shareReady(plan)))];
  if (version.seedsPerCell !== null && version.seedsPerCell > 1)
    ready.push(words.readyOfCells(version.seedsPerCell, percent(shareReady(plan, version.seedsPerCell))));
  return [
    labelled(
      words.startIn,
      version.targetContainer ? `${start}. ${words.target}: ${version.targetContainer.name}.` : `${start}.`,
      0.6,
    ),
    labelled(
      words.totalTime,
      `${daysOf(phases.total, words)}.${mayWait(plan) ? ` ${words.waits}` : ''} ${ready.join(' ')}`,
    ),
  ];
}

const daysOf = ({ usual, short, long }: PaceDays, words: ProtocolWords) => words.days(usual, short, long);

/** The phases whose lengths public protocols print beside what is done in them. */
const PHASE_OF_TEXT: Partial<Record<propagation.ProtocolText, GrowthPhase>> = {
  prePlanting: 'treatment',
  establishment: 'establishment',
  activeGrowth: 'active-growth',
  hardening: 'hardening',
};

/** The fields that public propagation protocols use, those that say nothing left out. */
function textsOf({ protocol: { version, plant } }: ProtocolPaper, words: ProtocolWords, mostLetters: number): Block[] {
  const phases = phaseDays({ stages: version.stages, dormantMonths: plant.dormantMonths });
  const fields = Object.keys(words.texts) as propagation.ProtocolText[];
  const said = fields.flatMap((field) => {
    const phase = PHASE_OF_TEXT[field];
    const length = phase && phases[phase].long > 0 ? `${daysOf(phases[phase], words)}.` : '';
    const text = [length, cutText(version.texts[field], mostLetters, words.more)].filter(Boolean).join(' ');
    return text === '' ? [] : [{ label: words.texts[field], text }];
  });
  return said.map(({ label, text }, at) => labelled(label, text, at === 0 ? 0.8 : 0.35));
}

/** A protocol on one page, whatever it says: the print shrinks first, then the longest texts are cut and say so. */
export function protocolPage(paper: ProtocolPaper): Promise<Uint8Array> {
  const words = protocolWords[paper.language];
  const { protocol } = paper;
  const title = `${words.title}: ${protocol.plant.scientificName}, ${words.methods[protocol.method]}`;
  return onePage(
    {
      title,
      author: paper.nurseryName,
      language: paper.language,
      paper: paper.units === 'us' ? 'letter' : 'a4',
      madeAt: paper.madeAt,
    },
    (document) => {
      const width = document.page.width - 2 * MARGIN;
      const height = document.page.height - 2 * MARGIN;
      const measures = measuresOf(paper.units, paper.language);
      const blocksFor = (mostLetters: number) => [
        ...headOf(paper, words),
        ...factsOf(paper, words),
        ...stageBlocks(protocol.version.stages, words, measures, mostLetters),
        ...textsOf(paper, words, mostLetters),
        ...(mostLetters < 2000 ? [whole([bold(words.cutNote)], 1, 0.6)] : []),
      ];
      const { blocks, size } = fit(document, blocksFor, width, height);
      let y = MARGIN;
      for (const block of blocks) y = drawBlock(document, block, { x: MARGIN, y, width }, size);
    },
  );
}
