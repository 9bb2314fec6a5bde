import { expect, test } from 'vitest'
import { asciiDigits } from '../../src/label/ascii-digits.ts'

test.each([
  ['full-width', '０１７ ００４２ ９５', '017 0042 95'],
  ['Arabic-Indic', '٠١٧ ٠٠٤٢ ٩٥', '017 0042 95'],
  ['extended Arabic-Indic', '۰۱۷ ۰۰۴۲ ۹۵', '017 0042 95'],
  ['Devanagari', '०१७ ००४२ ९५', '017 0042 95'],
  ['mathematical double-struck', '𝟘𝟙𝟟', '017'],
  ['mathematical monospace, at the end of a run of fifty', '𝟶𝟷𝟿', '019'],
  ['circled and superscript', '①²', '12'],
  ['no digits', 'M6x25', 'M6x25'],
])('%s', (_, text, expected) => {
  expect(asciiDigits(text)).toBe(expected)
})

// The number formats of Intl come from CLDR, another source for the digits of a script than the runs in Unicode.
test.each(Intl.supportedValuesOf('numberingSystem'))(
  'numbering system %s agrees with Intl',
  (numberingSystem) => {
    const written = new Intl.NumberFormat('en', { numberingSystem, useGrouping: false }).format(9876543210)
    // Systems that are not of decimal digits (Han numerals) are no digits to us either.
    expect(asciiDigits(written)).toBe(/^\p{Nd}+$/u.test(written) ? '9876543210' : written.normalize('NFKC'))
  },
)
