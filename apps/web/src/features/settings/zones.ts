/** Time zones to choose from, the one in use always among them, since a device may know fewer than the server. */
export function zoneChoices(current: string): { value: string; label: string }[] {
  const known = Intl.supportedValuesOf('timeZone');
  return (known.includes(current) ? known : [current, ...known]).map((zone) => ({
    value: zone,
    label: zone.replaceAll('_', ' '),
  }));
}
