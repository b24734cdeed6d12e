/** SiteCard: a site of a client with its beds in short; it leads to the site's own page. */
import type { clients as contracts } from '@rootclock/contracts';
import { paths } from '../../lib/paths.ts';
import { useMessages } from '../../messages/index.ts';
import { RowLink } from '../../ui/action/index.ts';
import { useBedFacts } from './bed-facts.ts';

export function SiteCard({ site }: { site: contracts.SiteRow }) {
  const { clients: words } = useMessages();
  const factsOf = useBedFacts();
  return (
    <article className="panel site-card">
      <h3>
        <RowLink to={paths.site(site.id)}>{site.name}</RowLink>
      </h3>
      {site.address && <p>{site.address}</p>}
      <p className="bed-facts">
        {[site.region, words.bedsCount(site.beds.length), site.livestockNear && words.livestock]
          .filter(Boolean)
          .join(' · ')}
      </p>
      {site.beds.length > 0 && (
        <ul className="bed-list">
          {site.beds.map((bed) => (
            <li key={bed.id} className="bed-row">
              <span>{bed.name}</span>
              <span className="bed-facts">{factsOf(bed)}</span>
            </li>
          ))}
        </ul>
      )}
    </article>
  );
}
