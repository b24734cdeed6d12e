import { randomUUID } from 'node:crypto';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { createDatabase, type TestDatabase } from '../../support/database.ts';
import { openNursery, refusalOf, sent, type TestNursery } from '../../support/nursery.ts';
import { stockOf } from '../../support/stock.ts';

let database: TestDatabase;
let nursery: TestNursery;
let stock: ReturnType<typeof stockOf>;
let ids: { plantId: string; containerId: string; placeId: string };

beforeAll(async () => {
  database = await createDatabase();
  nursery = await openNursery(database);
  stock = stockOf(nursery);
  ids = {
    plantId: await stock.addPlant(),
    containerId: await stock.addContainer({ code: 'plug-50', kind: 'tray', volumeMl: 60, cells: 50 }),
    placeId: await stock.addPlace(),
  };
});
afterAll(async () => {
  await nursery.close();
  await database.drop();
});

type Body = Parameters<ReturnType<TestNursery['as']>['stock']['receiveBought']>[0]['body'];
type Line = Body['lines'][number];
const line = (fields: Partial<Line> = {}): Line => ({
  lotId: randomUUID(),
  ...ids,
  form: 'plugs',
  receivedUnits: 50,
  ...fields,
});
const receive = (lines: Line[], fields: Partial<Body> = {}) =>
  nursery.as('crew').stock.receiveBought(sent({ happenedOn: '2026-05-18', vendor: 'Plug grower', lines, ...fields }));
const receiveOne = async (fields: Partial<Line> = {}, rest: Partial<Body> = {}) =>
  (await receive([line(fields)], rest)).lots[0]!;
const stored = async (lotId: string) =>
  (
    await nursery.sql(
      `SELECT code, potted_on::text, confined_on::text, confined_standing, container_on::text, container_standing FROM lot WHERE id = $1`,
      [lotId],
    )
  )[0]!;
const holdsOf = async (lotId: string) =>
  nursery.sql('SELECT reason, held_on::text FROM hold WHERE lot_id = $1', [lotId]);

describe('a delivery', () => {
  test('books what was received, and tells the difference to the invoice', async () => {
    const { lotId, differenceUnits, code } = await receiveOne({ invoicedUnits: 100, receivedUnits: 96 });
    expect(await stock.unitsOf(lotId)).toBe(96);
    expect(differenceUnits).toBe(-4);
    expect(code).toMatch(/^ASTU-26-\d{3}$/);
    expect(
      await nursery.sql(
        'SELECT kind, form, arrived_on::text, invoiced_units, received_units FROM intake WHERE lot_id = $1',
        [lotId],
      ),
    ).toEqual([{ kind: 'bought', form: 'plugs', arrived_on: '2026-05-18', invoiced_units: 100, received_units: 96 }]);
  });

  test('without an invoice has no difference', async () => {
    expect((await receiveOne()).differenceUnits).toBeNull();
  });

  test('of several lines is one entry', async () => {
    const { entryId, lots } = await receive([line(), line({ receivedUnits: 8 })]);
    expect(lots).toHaveLength(2);
    expect(await nursery.sql('SELECT kind FROM entry WHERE id = $1', [entryId])).toEqual([{ kind: 'receive' }]);
  });

  test('goes into quarantine unless it is said not to', async () => {
    expect(await holdsOf((await receiveOne()).lotId)).toEqual([{ reason: 'quarantine', held_on: '2026-05-18' }]);
    expect(await holdsOf((await receiveOne({}, { quarantine: false })).lotId)).toEqual([]);
  });

  test('keeps what the vendor stated as the source of its plants', async () => {
    const { sourceId } = await receiveOne(
      { vendorLot: 'V-77', provenance: 'Dane County', seedZone: '8b', origin: 'wild' },
      { pesticideStatement: 'no systemic insecticides' },
    );
    expect(await nursery.as().sources.readSource({ sourceId })).toMatchObject({
      kind: 'bought-plants',
      vendor: 'Plug grower',
      vendorLot: 'V-77',
      provenance: 'Dane County',
      seedZone: '8b',
      origin: 'wild',
      pesticideStatement: 'no systemic insecticides',
    });
  });

  test('of the same vendor lot has the same source, of another vendor another', async () => {
    const first = await receiveOne({ vendorLot: 'V-1' });
    expect((await receiveOne({ vendorLot: 'V-1' })).sourceId).toBe(first.sourceId);
    expect((await receiveOne({ vendorLot: 'V-1' }, { vendor: 'Another grower' })).sourceId).not.toBe(first.sourceId);
  });
});

describe('the clocks of bought plants', () => {
  test('begin at the stated sowing and germination', async () => {
    const { lotId } = await receiveOne({ sown: '2026-02-10', germinationDays: 14 });
    expect(await stored(lotId)).toMatchObject({
      potted_on: '2026-05-18',
      confined_on: '2026-02-24',
      confined_standing: 'recorded',
      container_on: '2026-02-24',
    });
    expect(await nursery.sql('SELECT sown_on::text FROM intake WHERE lot_id = $1', [lotId])).toEqual([
      { sown_on: '2026-02-10' },
    ]);
  });

  test('begin ten weeks before arrival where nothing was stated, marked as assumed', async () => {
    expect(await stored((await receiveOne()).lotId)).toMatchObject({
      confined_on: '2026-03-09',
      confined_standing: 'assumed',
      container_standing: 'assumed',
    });
  });

  test('begin on arrival for bare root', async () => {
    const containerId = await stock.addContainer({ code: 'pot-bare' });
    expect(await stored((await receiveOne({ form: 'bare-root', containerId })).lotId)).toMatchObject({
      confined_on: '2026-05-18',
      confined_standing: 'recorded',
      container_on: '2026-05-18',
    });
  });

  test('take the day in the pot that was stated', async () => {
    const containerId = await stock.addContainer({ code: 'pot-stated' });
    expect(
      await stored((await receiveOne({ form: 'pots', containerId, inPotSince: '2026-04-20' })).lotId),
    ).toMatchObject({ confined_on: '2026-03-09', container_on: '2026-04-20', container_standing: 'recorded' });
  });
});

describe('a delivery is refused', () => {
  const lines = (fields: Partial<Line>) => receive([line(), line(fields)]);

  test.each([
    ['with nothing received', { receivedUnits: 0 }, 'lines.1.receivedUnits'],
    ['with an invoice of less than none', { invoicedUnits: -1 }, 'lines.1.invoicedUnits'],
    ['with germination in half a day', { germinationDays: 0.5 }, 'lines.1.germinationDays'],
    ['sown on a day that does not exist', { sown: '2026-13' }, 'lines.1.sown'],
  ])('%s', async (_what, fields, field) => {
    expect(await refusalOf(lines(fields))).toMatchObject({ code: 'invalid-input', field });
  });

  test.each(['sown', 'inPotSince'])('when %s lies after the arrival', async (name) => {
    expect(await refusalOf(lines({ [name]: '2026-05-19' }))).toMatchObject({
      code: 'day-after-intake',
      field: `lines.1.${name}`,
      data: { intakeOn: '2026-05-18' },
    });
  });

  test.each(['plantId', 'containerId', 'placeId', 'sourceId'])('when it names a %s of nobody', async (name) => {
    expect(await refusalOf(lines({ [name]: randomUUID() }))).toMatchObject({
      code: 'not-found',
      field: `lines.1.${name}`,
    });
  });

  test('on a day to come', async () => {
    expect(await refusalOf(receive([line()], { happenedOn: '2026-05-21' }))).toMatchObject({
      code: 'day-in-future',
      field: 'happenedOn',
    });
  });

  test('into a place that is closed', async () => {
    const placeId = await stock.addPlace({ code: 'shut' });
    await nursery.as().stock.closePlace(sent({ placeId, untilAt: '2026-05-21T12:00:00Z', reason: 'sprayed' }));
    expect(await refusalOf(lines({ placeId }))).toMatchObject({
      code: 'place-closed',
      field: 'lines.1.placeId',
      data: { place: 'shut', reason: 'sprayed' },
    });
  });

  test('from a viewer', async () => {
    expect(
      (await refusalOf(nursery.as('viewer').stock.receiveBought(sent({ happenedOn: '2026-05-18', lines: [line()] }))))
        .code,
    ).toBe('not-allowed');
  });
});
