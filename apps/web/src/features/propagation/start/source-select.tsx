/** SourceSelect: where the seed, cuttings or divisions come from, among the sources of the plant. */
import { useQuery } from '@tanstack/react-query';
import { trpc } from '../../../lib/api/index.ts';
import { paths } from '../../../lib/paths.ts';
import { useMessages } from '../../../messages/index.ts';
import { TextLink } from '../../../ui/action/index.ts';
import { SelectField, type FieldProps } from '../../../ui/fields/index.ts';

const MOST_SOURCES = 100;

export interface SourceSelectProps extends FieldProps {
  plantId: string | null;
  value: string;
  onChange: (sourceId: string) => void;
}

export function SourceSelect({ plantId, value, onChange, ...props }: SourceSelectProps) {
  const { form: say } = useMessages().propagation;
  const { data } = useQuery({
    ...trpc.sources.listSources.queryOptions({ plantId, perPage: MOST_SOURCES }),
    enabled: plantId !== null,
  });
  const sources = plantId === null ? [] : (data?.rows ?? []);
  const none = plantId !== null && data !== undefined && sources.length === 0;
  const hint =
    plantId === null ? (
      say.sourceFirst
    ) : none ? (
      <>
        {say.noSource} <TextLink to={paths.sources()}>{say.addSource}</TextLink>
      </>
    ) : (
      say.motherHint
    );
  const choices = sources.map((source) => ({
    value: source.sourceId,
    label: [source.code, source.provenance, source.vendor, source.seedZone].filter(Boolean).join(' · '),
  }));
  return <SelectField {...props} hint={hint} value={value} onChange={onChange} choices={choices} />;
}
