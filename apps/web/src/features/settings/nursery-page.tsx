/** What counts for everybody in the nursery; an owner changes it, all others read it. */
import { people as contracts } from '@rootclock/contracts';
import { OWNER } from '@rootclock/domain';
import { useQuery } from '@tanstack/react-query';
import { trpc, useSession } from '../../lib/api/index.ts';
import { Submit, useCommandForm } from '../../lib/form/index.ts';
import { useFormat } from '../../lib/format/index.ts';
import { useCommand } from '../../lib/outbox/index.ts';
import { paths } from '../../lib/paths.ts';
import { useMessages } from '../../messages/index.ts';
import { ButtonLink } from '../../ui/action/index.ts';
import { toast } from '../../ui/feedback/index.ts';
import { DateField, NumberField, RadioField, SelectField, TextField } from '../../ui/fields/index.ts';
import { Form } from '../../ui/form/index.ts';
import { DefinitionList, PageHeader, Section } from '../../ui/layout/index.ts';
import { SettingsTabs } from './settings-tabs.tsx';
import { zoneChoices } from './zones.ts';

export function NurseryPage() {
  const { settings, plants } = useMessages();
  const { mayBe } = useSession();
  const { nursery: say } = settings;
  return (
    <>
      <PageHeader title={settings.title} facts={say.lead} />
      <SettingsTabs />
      {mayBe(OWNER) ? <NurseryForm /> : <NurseryFacts />}
      <Section title={say.growing}>
        <p>{say.growingLead}</p>
        <div className="row">
          <ButtonLink to={paths.containers()}>{plants.tabs.containers}</ButtonLink>
          <ButtonLink to={paths.rules()}>{plants.tabs.rules}</ButtonLink>
          <ButtonLink to={paths.windows()}>{plants.tabs.windows}</ButtonLink>
          <ButtonLink to={paths.substitutes()}>{plants.tabs.substitutes}</ButtonLink>
        </div>
      </Section>
    </>
  );
}

function NurseryForm() {
  const { nursery: say } = useMessages().settings;
  const { nursery } = useSession();
  const regions = useQuery(trpc.plants.listRegions.queryOptions({}));
  const { name, zone, units, noticeDays, seasonEndOn } = nursery;
  const form = useCommandForm({
    command: useCommand('people.editNursery', { title: say.save }),
    contract: contracts.editNursery,
    initial: {
      name,
      zone,
      region: nursery.region ?? '',
      units: units as (typeof contracts.UNIT_SYSTEMS)[number] | '',
      noticeDays: noticeDays as number | null,
      seasonEndOn,
    },
    body: (values) => ({ ...values, region: values.region || null }),
    row: { id: 'nursery', edition: nursery.edition },
    onSaved: () => toast({ text: say.saved }),
  });
  return (
    <Section title={nursery.name}>
      <Form {...form.props}>
        <TextField label={say.name} {...form.field('name')} />
        <SelectField label={say.zone} hint={say.zoneHint} choices={zoneChoices(zone)} {...form.field('zone')} />
        <SelectField
          label={say.region}
          hint={say.regionHint}
          optional
          empty={say.noRegion}
          choices={(regions.data ?? []).map((region) => ({ value: region.code, label: region.name }))}
          {...form.field('region')}
        />
        <RadioField
          label={say.units}
          look="segments"
          choices={[
            { value: 'us', label: say.us },
            { value: 'metric', label: say.metric },
          ]}
          {...form.field('units')}
        />
        <NumberField label={say.noticeDays} hint={say.noticeHint} unit={say.days} {...form.field('noticeDays')} />
        <DateField label={say.seasonEndOn} hint={say.seasonHint} {...form.field('seasonEndOn')} />
        <Submit form={form}>{say.save}</Submit>
      </Form>
    </Section>
  );
}

function NurseryFacts() {
  const { nursery: say } = useMessages().settings;
  const { nursery } = useSession();
  const { dates } = useFormat();
  return (
    <Section title={nursery.name}>
      <p>{say.ownerOnly}</p>
      <DefinitionList
        facts={[
          { term: say.zone, value: nursery.zone.replaceAll('_', ' ') },
          { term: say.region, value: nursery.region },
          { term: say.units, value: nursery.units === 'us' ? say.us : say.metric },
          { term: say.noticeDays, value: `${nursery.noticeDays} ${say.days}` },
          { term: say.seasonEndOn, value: dates.long(nursery.seasonEndOn) },
        ]}
      />
    </Section>
  );
}
