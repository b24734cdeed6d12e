// The order of files: a long one that begins last is waited for by one worker alone.
import { BaseSequencer, type TestSpecification } from 'vitest/node';

/** Folders whose files take long, the longest first; a fresh clone has not measured them yet. */
const LONG = ['tests/browser/every-screen', 'tests/browser/', 'tests/crash/', 'tests/model/', 'tests/history/'];

function placeOf(file: TestSpecification): number {
  const place = LONG.findIndex((folder) => file.moduleId.includes(`/${folder}`));
  return place === -1 ? LONG.length : place;
}

export class LongestFirst extends BaseSequencer {
  override async sort(files: TestSpecification[]): Promise<TestSpecification[]> {
    const sorted = await super.sort(files);
    // A worker keeps what it has read only while files of its own project follow.
    const long = sorted.filter((file) => file.project.name === 'system');
    return [
      ...long.toSorted((a, b) => placeOf(a) - placeOf(b)),
      ...sorted.filter((file) => file.project.name !== 'system'),
    ];
  }
}
