// All factors are exact by definition; NIST SP 811, appendix B. Names are lower case, without spaces, dots and hyphens.
const poundForce = 0.45359237 * 9.80665 // N
const foot = 0.3048 // m
const inch = 0.0254 // m
const kilogramForce = 9.80665 // N

/** Litres of a unit that is the same everywhere. */
export const litreUnits = new Map<string, number>(
  Object.entries({
    l: 1,
    ltr: 1,
    litre: 1,
    litres: 1,
    liter: 1,
    liters: 1,
    dl: 0.1,
    cl: 0.01,
    ml: 0.001,
    cc: 0.001,
    ccm: 0.001,
    cm3: 0.001,
    'cm³': 0.001,
  }),
)

/** Litres of a measure: the US gallon is 231 cubic inches. */
export const usLitres = { gal: 3.785411784, qt: 0.946352946, pt: 0.473176473, floz: 0.0295735295625 }
/** Litres of the imperial measures: a fifth more for the quart, less for the fluid ounce. */
export const imperialLitres = { gal: 4.54609, qt: 1.1365225, pt: 0.56826125, floz: 0.0284130625 }

export type Measure = keyof typeof usLitres

export const measureNames = new Map<string, Measure>(
  Object.entries({
    gal: 'gal',
    gallon: 'gal',
    qt: 'qt',
    quart: 'qt',
    pt: 'pt',
    pint: 'pt',
    floz: 'floz',
    fluidounce: 'floz',
  }),
)

export const measureText: Record<Measure, string> = { gal: 'gal', qt: 'qt', pt: 'pt', floz: 'fl oz' }

/** Newton metres of a unit. */
export const torqueUnits = new Map<string, number>(
  Object.entries({
    nm: 1,
    newtonmetre: 1,
    newtonmeter: 1,
    ncm: 0.01,
    cnm: 0.01,
    dnm: 0.1,
    knm: 1000,
    lbfft: poundForce * foot,
    lbft: poundForce * foot,
    ftlbf: poundForce * foot,
    ftlb: poundForce * foot,
    footpound: poundForce * foot,
    poundfoot: poundForce * foot,
    poundfeet: poundForce * foot,
    lbfin: poundForce * inch,
    lbin: poundForce * inch,
    inlbf: poundForce * inch,
    inlb: poundForce * inch,
    inchpound: poundForce * inch,
    poundinch: poundForce * inch,
    ozfin: (poundForce / 16) * inch,
    ozin: (poundForce / 16) * inch,
    inozf: (poundForce / 16) * inch,
    inoz: (poundForce / 16) * inch,
    kgfm: kilogramForce,
    kgm: kilogramForce,
    mkg: kilogramForce,
    mkgf: kilogramForce,
    kpm: kilogramForce,
    kgfcm: kilogramForce / 100,
    kgcm: kilogramForce / 100,
    cmkg: kilogramForce / 100,
    cmkgf: kilogramForce / 100,
  }),
)

/** Millimetres of a unit. */
export const millimetreUnits = new Map<string, number>(
  Object.entries({
    mm: 1,
    millimetre: 1,
    millimeter: 1,
    cm: 10,
    m: 1000,
    metre: 1000,
    meter: 1000,
    µm: 0.001,
    μm: 0.001,
    um: 0.001,
    micron: 0.001,
    micrometre: 0.001,
    micrometer: 0.001,
  }),
)

/** Inches of a unit. */
export const inchUnits = new Map<string, number>(
  Object.entries({ in: 1, inch: 1, inche: 1, '"': 1, thou: 0.001 }),
)
