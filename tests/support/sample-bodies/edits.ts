/**
 * What two people change of one row, drawn from the sample body of each command that edits in place: the same field, to two different things.
 * `apart` is a change of another field, which hinders nobody.
 */
export interface TwoEdits {
  /** What the field holds before, where the sample body does not say. */
  first?: Record<string, unknown>;
  theirs: Record<string, unknown>;
  mine: Record<string, unknown>;
  apart?: Record<string, unknown>;
}

export const twoEdits: Record<string, TwoEdits> = {
  'files.editAttachment': {
    theirs: { caption: 'In bud' },
    mine: { caption: 'In full bloom at last' },
    apart: { takenOn: '2026-05-17' },
  },
  'people.changePerson': { theirs: { name: 'Wren North' }, mine: { name: 'Wren South' }, apart: { role: 'crew' } },
  'people.editNursery': { theirs: { noticeDays: 31 }, mine: { noticeDays: 32 }, apart: { region: 'MN' } },
  'plants.editPlant': {
    first: { family: '' },
    theirs: { family: 'Apocynaceae' },
    mine: { family: 'Asclepiadaceae' },
    apart: { yearOfFirstBloom: 3 },
  },
  'plants.setPlantFact': { theirs: { value: 'part shade' }, mine: { value: 'shade' }, apart: { note: 'a wet year' } },
  'plants.editContainer': {
    theirs: { volumeMl: 2100 },
    mine: { volumeMl: 2200 },
    apart: { note: 'from the north shed' },
  },
  'sources.editSource': {
    theirs: { provenance: 'North fen' },
    mine: { provenance: 'South fen' },
    apart: { note: 'ask again' },
  },
  'stock.editPlace': {
    first: { name: 'Bench' },
    theirs: { name: 'North bench' },
    mine: { name: 'South bench' },
    apart: { coverMd: '11-01' },
  },
  'potLife.editRule': { theirs: { span: 'P7M' }, mine: { span: 'P8M' }, apart: { note: 'as last year' } },
  'potLife.editWindow': { theirs: { opensMd: '09-02' }, mine: { opensMd: '09-03' }, apart: { note: 'as last year' } },
  'potLife.setFreezeDay': { theirs: { freezeMd: '11-11' }, mine: { freezeMd: '11-12' } },
  'propagation.setLearning': { theirs: { priorWeight: 31 }, mine: { priorWeight: 32 }, apart: { evidenceLimit: 400 } },
  'clients.editClient': { theirs: { phone: '555 0101' }, mine: { phone: '555 0102' }, apart: { note: 'rings twice' } },
  'clients.editSite': {
    theirs: { address: '1 North Road' },
    mine: { address: '1 South Road' },
    apart: { livestockNear: true },
  },
  'clients.editBed': { theirs: { areaCm2: 10_000 }, mine: { areaCm2: 20_000 }, apart: { note: 'by the gate' } },
  'orders.editOrder': { theirs: { note: 'by the north gate' }, mine: { note: 'by the south gate' } },
  'promises.changeDay': { theirs: { dueOn: '2026-06-04' }, mine: { dueOn: '2026-06-05' } },
  'promises.editLine': { theirs: { units: 5 }, mine: { units: 6 }, apart: { bedId: null } },
  'orders.editSubstitutionRule': { theirs: { penalty: 5 }, mine: { penalty: 6 }, apart: { note: 'as agreed' } },
  'orders.editKit': { theirs: { name: 'North bed' }, mine: { name: 'South bed' }, apart: { note: 'for clay' } },
  'planning.editExpectedDemand': { theirs: { units: 81 }, mine: { units: 82 }, apart: { note: 'spring market' } },
};
