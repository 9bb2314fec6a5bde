const millimetresPerInch = 25.4 // exact since the international yard and pound agreement of 1959; NIST SP 811

const vulgarFractions: Record<string, string> = {
  '½': '1/2',
  '¼': '1/4',
  '¾': '3/4',
  '⅛': '1/8',
  '⅜': '3/8',
  '⅝': '5/8',
  '⅞': '7/8',
  '⅙': '1/6',
  '⅓': '1/3',
  '⅔': '2/3',
  '⅚': '5/6',
}

const numberWords = [
  'one',
  'two',
  'three',
  'four',
  'five',
  'six',
  'seven',
  'eight',
  'nine',
  'ten',
  'eleven',
  'twelve',
]

/**
 * A text as a keyboard without special signs would give it: single spaces, plain hyphens, quotes, slashes and
 * stars, and `1½` as `1-1/2`. For reading numbers and units only: names keep the signs they were typed with.
 */
export function tidy(text: string): string {
  return text
    .replace(/\s+/gu, ' ')
    .trim()
    .replace(/(\d?)([½¼¾⅛⅜⅝⅞⅙⅓⅔⅚])(?=(\d?))/gu, (_, before: string, sign: string, after: string) =>
      [before, before && '-', vulgarFractions[sign], after && ' '].join(''),
    )
    .replace(/[\u2010-\u2015\u2212]/gu, '-')
    .replace(/[\u201c-\u201f\u2033]/gu, '"')
    .replace(/\u2044/gu, '/')
    .replace(/[×✕✖]/gu, 'x')
    .replace(/[\u22c5\u2219\u2022]/gu, '·')
    .replace(/º/gu, '°')
}

/** A number with a decimal point or comma and up to nine digits on either side; undefined for anything else. */
export function readDecimal(text: string): number | undefined {
  if (!/^[+-]?(?:\d{1,9}(?:[.,]\d{1,9})?|[.,]\d{1,9})$/.test(text)) return undefined
  return Number(text.replace(',', '.'))
}

/** A fraction such as `3/4`, `1-1/2`, `1 1/2`, or a decimal number; undefined for anything else. */
export function readFraction(text: string): number | undefined {
  const match = /^(?:(\d{1,4})[ -])?(\d{1,3})\/(\d{1,3})$/.exec(text)
  if (!match) return readDecimal(text)
  const [, whole = '0', numerator, denominator] = match
  if (Number(denominator) === 0) return undefined
  return Number(whole) + Number(numerator) / Number(denominator)
}

/** A whole number in digits, or in words from one to twelve; undefined for anything else. */
export function readWhole(text: string): number | undefined {
  if (/^\d{1,9}$/.test(text)) return Number(text)
  const word = numberWords.indexOf(text.toLowerCase())
  return word < 0 ? undefined : word + 1
}

/** Inches in millimetres. */
export function inchesToMillimetres(inches: number): number {
  return withoutNoise(inches * millimetresPerInch)
}

/** Inches as a mechanic writes them: the fraction where it is one of 64ths or coarser, else the decimal. */
export function inchText(millimetres: number): string {
  const inches = Number((millimetres / millimetresPerInch).toFixed(9))
  const sixtyFourths = Math.round(inches * 64)
  if (Math.abs(sixtyFourths / 64 - inches) > 1e-9) return String(inches)
  const whole = Math.floor(sixtyFourths / 64)
  let numerator = sixtyFourths % 64
  let denominator = 64
  if (numerator === 0) return String(whole)
  while (numerator % 2 === 0) {
    numerator /= 2
    denominator /= 2
  }
  return whole === 0 ? `${numerator}/${denominator}` : `${whole}-${numerator}/${denominator}`
}

/** A product of decimals without the noise of binary arithmetic: 7 dl is 0.7 l, not 0.7000000000000001. */
export function withoutNoise(value: number): number {
  return Number(value.toPrecision(14))
}
