/** What every sheet about a source's seed is given. */
import type { SourceStory } from '../source-story.ts';

export interface SeedSheetProps {
  source: SourceStory;
  onClose: () => void;
}
