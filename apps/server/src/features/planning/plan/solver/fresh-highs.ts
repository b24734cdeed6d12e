import loadHighs, { type Highs } from 'highs';

/** HiGHS, loaded anew after whatever was thrown in it: a module that was aborted may answer wrongly from then on, or not at all. */
export class FreshHighs {
  private loaded: Promise<Highs> | null = null;

  constructor(private readonly load: () => Promise<Highs> = () => loadHighs()) {}

  async use<Answer>(work: (highs: Highs) => Answer): Promise<Answer> {
    try {
      return work(await (this.loaded ??= this.load()));
    } catch (error) {
      this.loaded = null;
      throw error;
    }
  }
}
