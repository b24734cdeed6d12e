/** CodeLink: the code of a lot or source in a row, leading to its page; a code is one word and is never broken. */
import { RowLink } from '../../ui/action/index.ts';
import './code-link.css';

export function CodeLink({ to, children }: { to: string; children: string }) {
  return (
    <span className="code-link">
      <RowLink to={to}>{children}</RowLink>
    </span>
  );
}
