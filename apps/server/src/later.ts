/** Runs something later, without keeping the process alive for it; answers how to call that off. */
export function later(ms: number, run: () => void): () => void {
  const timer = setTimeout(run, ms).unref();
  return () => clearTimeout(timer);
}
