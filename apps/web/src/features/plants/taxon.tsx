/** Taxon: a scientific name as print sets it: what a cultivar is called stands upright in its quotes. */
export function Taxon({ name }: { name: string }) {
  const at = name.indexOf("'");
  if (at < 0) return <i lang="la">{name}</i>;
  return (
    <>
      <i lang="la">{name.slice(0, at).trimEnd()}</i> {name.slice(at)}
    </>
  );
}
