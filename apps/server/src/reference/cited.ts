/**
 * Sources named by more than one value, written out once. A standing of "confirmed" means that the value is printed there,
 * not that it was tried in this nursery.
 */
export const COLORADO_POISONOUS = 'Colorado State University, Guide to Poisonous Plants, entry 11 (Asclepias)';
export const COWLING_ARBORETUM = 'Carleton College Cowling Arboretum prairie gallery';
export const EASTERN_ILLINOIS =
  'Eastern Illinois University prairie seedling pages (castle.eiu.edu/~prairie/ceanamer.htm)';
export const GERMINATION_CODES = 'dealer list of grower germination codes';
export const IRVINE_MIX =
  'Tallgrass Prairie Center (Univ. Northern Iowa), Irvine Prairie Seeding Area 9 seed mix, seeded 2021-04-26 (seeds/ft2 x 43,560 / PLS lb per acre)';
export const JENKINS_ARBORETUM = 'Jenkins Arboretum';
export const LUNA_DUMROESE =
  'Luna & Dumroese 2013, Native Plants Journal 14(1):5-15, abstract (genus level: monarch larvae feed on Asclepias leaves)';
export const LUPINE_STUDY = 'J. Environ. Hort. 14(4):167';
export const MIDWEST_PROFILES = 'Midwest plant-materials target species profiles';
export const MINNESOTA_DRY_MIX = 'Minnesota BWSR Conservation-Dry Northwest seed mix sheet';
export const MISSOURI_GARDEN = 'Missouri Botanical Garden text';
export const NPN_ECHINACEA = 'Native Plant Network protocol T. Luna, Glacier NP (asteraceae-echinacea-26)';
export const NPN_ECHINACEA_SECOND = 'Native Plant Network protocol K. Dumroese (asteraceae-echinacea-3518)';
export const NPN_INCARNATA = 'Native Plant Network protocol J. Schultz, Hiawatha NF (asclepiadaceae-asclepias-1488)';
export const NPN_LIATRIS = 'Native Plant Network protocol J. Schultz, Hiawatha NF (ProtocolID 1725)';
export const NPN_LIATRIS_BASKIN = 'Native Plant Network protocol Baskin & Baskin 2002 (asteraceae-liatris-1844)';
export const NPN_MONARDA = 'Native Plant Network protocol Glacier NP (ProtocolID 95)';
export const NPN_RUDBECKIA = 'Native Plant Network protocol J. Douglas, Coffeeville PMC (asteraceae-rudbeckia-397)';
export const NPN_SPECIOSA = 'Native Plant Network protocol A. Bartow 2006, Corvallis PMC (-2301)';
export const NPN_SYRIACA = 'Native Plant Network protocol J. Schultz, Hiawatha NF (asclepiadaceae-asclepias-1489)';
export const SEED_LIBRARY = 'seed library text';
export const SEED_SELLER = 'seed seller';
export const SHORT_PRAIRIE_MIX =
  'a commercial mesic Short Prairie mix specification (grower; seeds/ft2 x 43,560 / PLS oz per acre x 16)';
export const TEXAS_CATALOGUE = 'Texas seed catalogue';
export const WOODLAND_LIST = 'a woodland plant list';
export const IARC_VOLUME_82 = 'IARC Monographs vol. 82';
export const NRCS_MONARCH = 'NRCS Missouri IS-MO-643 (Dec 2017); NRCS E327136Z2';
