/** PlantName: the scientific name in italics, since only it settles which plant is meant; the epithet of a cultivar stands upright. */
export function PlantName({ name, author }: { name: string; author?: string }) {
  const cultivar = / '[^']+'$/.exec(name)?.[0] ?? '';
  return (
    <>
      <i lang="la">{name.slice(0, name.length - cultivar.length)}</i>
      {cultivar}
      {author ? ` ${author}` : ''}
    </>
  );
}
