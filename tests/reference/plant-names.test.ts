import { referencePlants } from '@rootclock/server/reference/index'
import { describe, expect, it } from 'vitest'

/** Codes of all plants that go by a common name, whatever its capitals. */
function meant(name: string): string[] {
  return referencePlants
    .filter((plant) => plant.commonNames.some((common) => common.name.toLowerCase() === name.toLowerCase()))
    .map((plant) => plant.code)
    .sort()
}

describe('common names', () => {
  it('that several plants share point at all of them', () => {
    expect(meant('butterfly weed')).toEqual(['ASCU', 'ASTH', 'ASTU'])
    expect(meant('butterfly milkweed')).toEqual(['ASCU', 'ASTH', 'ASTU'])
    expect(meant('black-eyed Susan')).toEqual(['RUFU', 'RUHI'])
    expect(meant('blazing star')).toEqual(['LIAS', 'LIPY'])
    expect(meant('coneflower')).toEqual(['ECPA', 'ECPU', 'RUFU', 'RUHI'])
    expect(meant('wild indigo')).toEqual(['BAAL', 'BAAU'])
  })

  it('reach every milkweed through "milkweed"', () => {
    const milkweeds = referencePlants.filter((plant) => plant.genus === 'Asclepias').map((plant) => plant.code)
    expect(meant('milkweed')).toEqual(milkweeds.sort())
  })

  it('begin with the vernacular name, each name once a plant, each with its standing', () => {
    for (const { commonNames, vernacularName } of referencePlants) {
      expect(commonNames[0]?.name).toBe(vernacularName)
      expect(new Set(commonNames.map((common) => common.name.toLowerCase())).size).toBe(commonNames.length)
      expect(commonNames.every((common) => common.standing === 'from memory')).toBe(true)
    }
  })
})

describe('scientific names', () => {
  it('are made of their Darwin Core parts', () => {
    for (const plant of referencePlants) {
      const species = `${plant.genus} ${plant.specificEpithet}`
      expect(plant.scientificName).toBe(plant.cultivarEpithet === null ? species : `${species} '${plant.cultivarEpithet}'`)
      expect(plant.taxonRank).toBe(plant.cultivarEpithet === null ? 'species' : 'cultivar')
      expect(plant.infraspecificEpithet).toBeNull()
    }
  })

  it('have an author with every species and none with a cultivar', () => {
    expect(referencePlants.filter((plant) => (plant.scientificNameAuthorship === '') !== (plant.taxonRank === 'cultivar'))).toEqual([])
  })

  // ICNCP, 9th ed. 2016: single quotes, capitalised, no "cv.".
  it('of cultivars are written as the code of nomenclature for cultivated plants asks', () => {
    const cultivars = referencePlants.filter((plant) => plant.taxonRank === 'cultivar')
    expect(cultivars.length).toBeGreaterThan(0)
    for (const { scientificName, cultivarEpithet } of cultivars) {
      expect(scientificName).toMatch(/^[A-Z][a-z]+ [a-z-]+ '[A-Z][^']*'$/)
      expect(scientificName).not.toMatch(/\bcv\./)
      expect((cultivarEpithet ?? '').split(' ').every((word) => /^[A-Z]/.test(word))).toBe(true)
    }
  })

  it('of a cultivar bring assumptions about it and no native range', () => {
    const cultivar = referencePlants.find((plant) => plant.taxonRank === 'cultivar')
    expect(cultivar?.facts.heightCm.standing).toBe('assumed')
    expect(cultivar?.facts.nativeRegions.value).toEqual([])
  })

  it('have one code each, of two letters of the genus and two more', () => {
    expect(new Set(referencePlants.map((plant) => plant.code)).size).toBe(referencePlants.length)
    expect(referencePlants.filter((plant) => !plant.code.startsWith(plant.genus.slice(0, 2).toUpperCase()) || !/^[A-Z]{4}$/.test(plant.code))).toEqual([])
  })

  it('are met under the names they used to have', () => {
    const synonyms = new Map(referencePlants.flatMap((plant) => plant.synonyms.map((synonym) => [synonym.scientificName, plant.scientificName])))
    expect(synonyms.get('Aster novae-angliae')).toBe('Symphyotrichum novae-angliae')
    expect(synonyms.get('Eupatorium maculatum')).toBe('Eutrochium maculatum')
    expect(synonyms.get('Andropogon scoparius')).toBe('Schizachyrium scoparium')
    expect(synonyms.get('Oligoneuron rigidum')).toBe('Solidago rigida')
  })

  it('are never a synonym of another plant', () => {
    const accepted = new Set(referencePlants.map((plant) => plant.scientificName))
    const synonyms = referencePlants.flatMap((plant) => plant.synonyms.map((synonym) => synonym.scientificName))
    expect(synonyms.filter((name) => accepted.has(name))).toEqual([])
    expect(new Set(synonyms).size).toBe(synonyms.length)
  })
})
